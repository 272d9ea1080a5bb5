/** `skirtgrade grade`: the main job, from a chart file to a folder of results. */
import { gradeChart } from '../pipeline';
import type { PrintFile } from '../print/print-files';
import type { PrintRequest } from '../print/print-options';
import { resultFiles } from '../result-files';
import { gradeReport } from './grade-report';
import type { GradeRequestOptions } from './grade-request';
import { gradeRequest, outFolder } from './grade-request';
import type { Io } from './io';
import type { ExitCode } from './main';
import { writeFiles } from './write-files';

export type GradeCommandOptions = GradeRequestOptions & Partial<PrintRequest>;

/** With `--paper` the printed pattern is among the results. */
export async function gradeCommand(
  file: string,
  options: GradeCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const result = gradeChart(gradeRequest(file, options, io));
  const { paper } = options;
  let printed: readonly PrintFile[] = [];
  if (paper !== undefined) {
    const { printResult } = await import('../print/print-result');
    printed = await printResult(result, { ...options, paper });
  }
  const written = writeFiles(outFolder(file, options), [...resultFiles(result), ...printed]);
  io.out(gradeReport(result, written, io.color));
  return result.findings.some(({ severity }) => severity === 'fail') ? 1 : 0;
}
