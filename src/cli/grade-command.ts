/** `skirtgrade grade`: the main job, from a chart file to a folder of results. */
import { basename } from 'node:path';
import { readStyle } from '../draft/style-file';
import { InputError } from '../errors';
import { gradeChart } from '../pipeline';
import { resultFiles } from '../result-files';
import type { LengthUnit } from '../units';
import { gradeReport } from './grade-report';
import type { ExitCode, Io } from './io';
import { writeFiles } from './write-files';

export interface GradeCommandOptions {
  readonly base: string;
  readonly style: string;
  readonly set: readonly string[];
  readonly sizes?: readonly string[];
  readonly round?: string;
  readonly stack?: string;
  readonly unit?: LengthUnit;
  readonly fractions?: boolean;
  readonly against: readonly string[];
  readonly out?: string;
}

export function gradeCommand(file: string, options: GradeCommandOptions, io: Io): ExitCode {
  const { set, style, against, out, ...rest } = options;
  const result = gradeChart({
    ...rest,
    chart: io.readText(file),
    file,
    style: /\.csv$/i.test(style) ? readStyle(io.readText(style), style) : style,
    set: settingsOf(set),
    ...(against.length > 0 ? { against } : {}),
  });
  const folder = out ?? `output/${basename(file).replace(/\.[^.]*$/, '')}`;
  const written = writeFiles(folder, resultFiles(result));
  io.out(gradeReport(result, written, io.color));
  return result.findings.some(({ severity }) => severity === 'fail') ? 1 : 0;
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
