/** `skirtgrade grade`: the main job, from a chart file to a folder of results. */
import { basename } from 'node:path';
import { readStyle } from '../draft/style-file';
import { gradeChart } from '../pipeline';
import { resultFiles } from '../result-files';
import type { LengthUnit } from '../units';
import { gradeReport } from './grade-report';
import type { Io } from './io';
import type { ExitCode } from './main';
import { settingsOf } from './settings';
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
