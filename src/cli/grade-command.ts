/** `skirtgrade grade`: the main job, from a chart file to a folder of results. */
import { skirtDxf } from '../files/dxf-files';
import { gradeChart } from '../jobs/grade-chart';
import type { PrintFile } from '../files/print-files';
import type { PrintRequest } from '../print/print-options';
import type { ResultFile } from '../files/result-files';
import { resultFiles } from '../files/result-files';
import type { DxfOptions } from './dxf-request';
import { withDxf } from './dxf-request';
import { gradeReport } from './grade-report';
import type { GradeRequestOptions } from './grade-request';
import { gradeRequest, outFolder } from './grade-request';
import type { ExitCode, Io } from './io';
import type { SpecOptions } from './spec-request';
import { withSpec } from './spec-request';

export type GradeCommandOptions = GradeRequestOptions &
  Partial<PrintRequest> &
  SpecOptions &
  DxfOptions & {
    /** Lays the pieces out for the cloth to buy, which takes longer than all the rest. */
    readonly fabric?: boolean;
  };

/** With `--paper` the printed pattern is among the results, with `--fabric` the cloth to buy. */
export async function gradeCommand(
  file: string,
  options: GradeCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const graded = gradeChart(gradeRequest(file, options, io));
  const [specified, spec] = withSpec(graded, graded.range, options, io);
  const [result, exchanged] = withDxf(specified, options, skirtDxf);
  const { paper, fabric = false } = options;
  let cloth: readonly ResultFile[] = [];
  if (fabric) {
    const { fabricFiles } = await import('../files/fabric-files');
    cloth = fabricFiles(result);
  }
  let printed: readonly PrintFile[] = [];
  if (paper !== undefined) {
    const { printResult } = await import('../files/print-result');
    printed = await printResult(result, { ...options, paper });
  }
  const files = [...resultFiles(result), ...spec, ...exchanged, ...cloth, ...printed];
  const written = io.write(outFolder(file, options), files);
  io.out(gradeReport(result, written, printed, io.color));
  return result.findings.some(({ severity }) => severity === 'fail') ? 1 : 0;
}
