/** The options that every command which grades a chart has in common. */
import { basename } from 'node:path';
import type { AllowancePreset } from '../draft/allowance-parameters';
import { readStyle } from '../draft/style-file';
import { InputError } from '../errors';
import type { GradeRequest } from '../pipeline';
import type { LinesShown } from '../render/lines-shown';
import type { LengthUnit } from '../units';
import type { Io } from './io';

export interface GradeRequestOptions {
  readonly base: string;
  readonly style: string;
  readonly allowances?: AllowancePreset;
  readonly set: readonly string[];
  readonly sizes?: readonly string[];
  readonly round?: string;
  readonly stack?: string;
  readonly unit?: LengthUnit;
  readonly fractions?: boolean;
  readonly lines?: LinesShown;
  readonly against: readonly string[];
  readonly out?: string;
}

/** Reads the files that the options name. */
export function gradeRequest(file: string, options: GradeRequestOptions, io: Io): GradeRequest {
  const { base, style, set, sizes, round, stack, unit, fractions, against } = options;
  const { allowances, lines } = options;
  return {
    chart: io.readText(file),
    file,
    base,
    style: /\.csv$/i.test(style) ? readStyle(io.readText(style), style) : style,
    set: settingsOf(set),
    ...(allowances === undefined ? {} : { allowances }),
    ...(sizes === undefined ? {} : { sizes }),
    ...(round === undefined ? {} : { round }),
    ...(stack === undefined ? {} : { stack }),
    ...(unit === undefined ? {} : { unit }),
    ...(fractions === undefined ? {} : { fractions }),
    ...(lines === undefined ? {} : { lines }),
    ...(against.length > 0 ? { against } : {}),
  };
}

/** The folder of the results: the one asked for, or one named after the chart. */
export function outFolder(file: string, { out }: Pick<GradeRequestOptions, 'out'>): string {
  return out ?? `output/${basename(file).replace(/\.[^.]*$/, '')}`;
}

function settingsOf(texts: readonly string[]): Record<string, string> {
  const settings = new Map<string, string>();
  for (const text of texts) {
    const match = /^\s*([A-Za-z_]\w*)\s*=(.*)$/s.exec(text);
    const [, name = '', value = ''] = match ?? [];
    if (match === null)
      throw new InputError('bad-option', {
        what: 'a setting is a parameter, an equals sign and a value or formula',
        allowed: 'such as hem_taper="1 1/2 in"',
        got: text,
        place: { option: '--set' },
      });
    if (settings.has(name))
      throw new InputError('parameter-twice', {
        what: 'the parameter is set twice',
        allowed: 'one --set a parameter',
        got: name,
        place: { option: '--set', parameter: name },
      });
    settings.set(name, value.trim());
  }
  return Object.fromEntries(settings);
}
