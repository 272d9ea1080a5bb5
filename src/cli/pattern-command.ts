/** `skirtgrade grade --pattern`: a given pattern and its rules to a folder of results. */
import { basename } from 'node:path';
import { patternDxf } from '../files/dxf-files';
import { InputError } from '../errors';
import type { NamedText, PatternRequest } from '../jobs/grade-pattern';
import { gradePattern } from '../jobs/grade-pattern';
import { patternFiles } from '../files/pattern-files';
import type { PrintFile } from '../files/print-files';
import type { PrintRequest } from '../print/print-options';
import type { LinesShown } from '../render/lines-shown';
import type { ResultFile } from '../files/result-files';
import type { LengthUnit } from '../units';
import type { DxfOptions } from './dxf-request';
import { withDxf } from './dxf-request';
import type { ExitCode, Io } from './io';
import { patternReport } from './pattern-report';
import type { SpecOptions } from './spec-request';
import { withSpec } from './spec-request';

export interface PatternCommandOptions extends SpecOptions, DxfOptions, Partial<PrintRequest> {
  readonly pattern: string;
  readonly rules?: string;
  readonly chart?: string;
  readonly seams?: string;
  readonly base?: string;
  readonly sizes?: readonly string[];
  readonly round?: string;
  readonly stack?: string;
  readonly unit?: LengthUnit;
  readonly fractions?: boolean;
  readonly lines?: LinesShown;
  readonly fabric?: boolean;
  readonly out?: string;
}

export async function patternCommand(options: PatternCommandOptions, io: Io): Promise<ExitCode> {
  const graded = gradePattern(patternRequest(options, io));
  const [specified, spec] = withSpec(graded, undefined, options, io);
  const [result, exchanged] = withDxf(specified, options, patternDxf);
  const folder = options.out ?? `output/${basename(options.pattern).replace(/\.[^.]*$/, '')}`;
  const { paper, fabric = false } = options;
  let cloth: readonly ResultFile[] = [];
  if (fabric) {
    const { patternFabric } = await import('../files/pattern-fabric');
    cloth = patternFabric(result);
  }
  let printed: readonly PrintFile[] = [];
  if (paper !== undefined) {
    const { printPattern } = await import('../files/print-pattern');
    printed = await printPattern(result, { ...options, paper });
  }
  const written = io.write(folder, [
    ...patternFiles(result),
    ...spec,
    ...exchanged,
    ...cloth,
    ...printed,
  ]);
  io.out(patternReport(result, written, printed, io.color));
  return result.findings.some(({ severity }) => severity === 'fail') ? 1 : 0;
}

function patternRequest(options: PatternCommandOptions, io: Io): PatternRequest {
  const { pattern, rules, chart, seams, ...rest } = options;
  if (rules === undefined) {
    throw new InputError('bad-option', {
      what: 'a pattern is graded by a rule sheet',
      allowed: '--rules <rules.csv> together with --pattern',
      place: { option: '--rules' },
    });
  }
  const read = (file: string): NamedText => ({ text: io.readText(file), file });
  return {
    ...rest,
    pattern: read(pattern),
    rules: read(rules),
    ...(chart === undefined ? {} : { chart: read(chart) }),
    ...(seams === undefined ? {} : { seams: read(seams) }),
  };
}
