/** The options of `grade` that ask for a spec. */
import { bySeverity } from '../check/finding';
import type { Finding } from '../check/finding';
import type { GradedPattern, GradedRange } from '../grade/graded-range';
import type { NamedText } from '../jobs/grade-pattern';
import type { SpecRequest } from '../jobs/grade-spec';
import { gradeSpec, specFiles } from '../jobs/grade-spec';
import type { ResultFile } from '../files/result-files';
import type { LengthDisplay } from '../units';
import type { Io } from './io';

/** These options as commander reads them; either file asks for the spec as well. */
export interface SpecOptions {
  readonly spec?: boolean;
  /** Path of a list of points of measure. */
  readonly measures?: string;
  /** Path of a measured sample. */
  readonly measured?: string;
}

interface Result {
  readonly range: GradedPattern;
  readonly display: LengthDisplay;
  readonly findings: readonly Finding[];
}

/** The result with the findings of its spec, and the files of the spec; none if not asked for. */
export function withSpec<Graded extends Result>(
  result: Graded,
  skirt: GradedRange | undefined,
  options: SpecOptions,
  io: Io,
): readonly [Graded, readonly ResultFile[]] {
  const { spec, measures, measured } = options;
  if (!spec && measures === undefined && measured === undefined) return [result, []];
  const read = (file: string): NamedText => ({ text: io.readText(file), file });
  const request: SpecRequest = {
    ...(measures === undefined ? {} : { measures: read(measures) }),
    ...(measured === undefined ? {} : { measured: read(measured) }),
  };
  const found = gradeSpec(result.range, skirt, request, result.display);
  const findings = bySeverity([...result.findings, ...found.findings]);
  return [{ ...result, findings }, specFiles(found)];
}
