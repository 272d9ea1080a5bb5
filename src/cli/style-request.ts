/** The style of a call: its name or file, and the parameters that `--set` changes. */
import type { StyleChoice } from '../draft/style-file';
import { readStyle } from '../draft/style-file';
import { withSettings } from '../draft/with-settings';
import type { InputProblem } from '../errors';
import { InputError } from '../errors';
import type { GradeRequest } from '../jobs/requests';
import { namesMeant } from '../table/name-match';
import type { Io } from './io';
import { STDIN, readNamed } from './read-named';

/** These options as commander reads them. */
export interface StyleOptions {
  /** Name of a style, or the path of a style file, which ends in `.csv`. */
  readonly style: string;
  /** Each `parameter=formula`, as typed. */
  readonly set: readonly string[];
  /** What a project file sets on top of the style. */
  readonly project?: Pick<StyleChoice, 'settings' | 'lines' | 'title'> | undefined;
}

/** Reads the style file that is named. Throws InputError `bad-option` or `parameter-twice`. */
export function styleRequest(
  { style, set, project }: StyleOptions,
  io: Io,
): Required<Pick<GradeRequest, 'style' | 'set'>> {
  const named = isStyleFile(style) ? readStyle(...textAndName(style, io)) : style;
  return {
    style: project === undefined ? named : withSettings(named, project),
    set: settingsOf(set),
  };
}

/** Whether a style is a file: by the end of its name or from the standard input. */
export function isStyleFile(style: string): boolean {
  return style === STDIN || /\.csv$/iu.test(style);
}

function textAndName(style: string, io: Io): [text: string, file: string] {
  const { text, file } = readNamed(io, style);
  return [text, file];
}

/** Each `hem_taper=1 in` as name and value. Throws InputError `bad-option` or `parameter-twice`. */
export function settingsOf(texts: readonly string[]): Record<string, string> {
  const settings = new Map<string, string>();
  for (const text of texts) {
    const match = /^\s*([A-Za-z_][\w -]*?)\s*=(.*)$/s.exec(text);
    const [, name = '', value = ''] = match ?? [];
    if (match === null)
      throw new InputError('bad-option', {
        what: 'a setting is a parameter, an equals sign and a value or formula',
        allowed: 'such as hem_taper="1 1/2 in"',
        got: text,
        place: { field: 'set' },
      });
    if ([...settings.keys()].some((other) => namesMeant(name, [other]).length > 0))
      throw new InputError('parameter-twice', {
        what: 'the parameter is set twice',
        allowed: 'one --set a parameter',
        got: name,
        place: { field: 'set', parameter: name },
      });
    settings.set(name, value.trim());
  }
  return Object.fromEntries(settings);
}

/**
 * What `read` gives; a point or a piece that the style lacks is told with the name of the style, since a sheet
 * may be of another.
 */
export function inStyle<Result>(style: string, read: () => Result): Result {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof InputError) || error.code !== 'point-unknown') throw error;
    const { also = [], ...problem } = error.problem;
    const ofStyle = (one: InputProblem): InputProblem => ({
      ...one,
      what: `${one.what} in style ${style}`,
    });
    throw new InputError(error.code, { ...ofStyle(problem), also: also.map(ofStyle) });
  }
}
