/** `skirtgrade grade`: the main job, from a chart file to a folder of results. */
import { skirtDxf } from '../dxf-files';
import { gradeChart } from '../pipeline';
import type { PrintFile } from '../print/print-files';
import type { PrintRequest } from '../print/print-options';
import { cutFiles, resultFiles } from '../result-files';
import { gradeReport } from './grade-report';
import type { GradeRequestOptions } from './grade-request';
import { gradeRequest, outFolder } from './grade-request';
import type { ExitCode, Io } from './io';
import type { SpecOptions } from './spec-request';
import { withSpec } from './spec-request';
import { writeFiles } from './write-files';

export type GradeCommandOptions = GradeRequestOptions &
  Partial<PrintRequest> &
  SpecOptions & { readonly cut?: boolean; readonly dxf?: boolean };

/** With `--paper` the printed pattern is among the results. */
export async function gradeCommand(
  file: string,
  options: GradeCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const graded = gradeChart(gradeRequest(file, options, io));
  const [result, spec] = withSpec(graded, graded.range, options, io);
  const { paper } = options;
  let printed: readonly PrintFile[] = [];
  if (paper !== undefined) {
    const { printFiles } = await import('../print/print-files');
    printed = await printFiles(result, { ...options, paper });
  }
  const written = writeFiles(outFolder(file, options), [
    ...resultFiles(result),
    ...spec,
    ...(options.cut ? cutFiles(result) : []),
    ...(options.dxf ? skirtDxf(result) : []),
    ...printed,
  ]);
  io.out(gradeReport(result, written, io.color));
  return result.findings.some(({ severity }) => severity === 'fail') ? 1 : 0;
}
