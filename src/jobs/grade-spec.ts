/** The spec of a graded pattern as a pure function, and a measured sample held against it. */
import type { Finding } from '../check/finding';
import { checkSample, checkTolerances } from '../check/spec';
import { InputError } from '../errors';
import type { NamedText } from './grade-pattern';
import type { GradedPattern, GradedRange } from '../grade/graded-range';
import { sampleTable, gradeSheet, specTable } from '../files/spec-tables';
import type { ResultFile } from '../files/result-files';
import { patternSpec, skirtSpec } from '../measure/make-spec';
import { readMeasures } from '../measure/read-measures';
import type { Deviation } from '../measure/sample';
import { deviations, readSample, sampleFits } from '../measure/sample';
import type { Spec } from '../measure/spec';
import type { LengthDisplay } from '../units';

/** What a spec is made from besides the pattern. */
export interface SpecRequest {
  /** Points of measure, CSV; without them a skirt has its usual ones. */
  readonly measures?: NamedText;
  /** A measured sample, CSV. */
  readonly measured?: NamedText;
}

/** A spec, and how a measured sample compares with it; lengths in mm. */
export interface SpecResult {
  readonly spec: Spec;
  /** One a measured value; empty where no sample was measured. */
  readonly sample: readonly Deviation[];
  readonly findings: readonly Finding[];
}

/**
 * Takes the points of measure in every size. `skirt` is the range where the pattern was drafted, so
 * that it has finished measurements of its own. Throws InputError for lists that cannot be used.
 */
export function gradeSpec(
  range: GradedPattern,
  skirt: GradedRange | undefined,
  { measures, measured }: SpecRequest,
  display: LengthDisplay,
): SpecResult {
  if (measures === undefined && skirt === undefined) {
    throw new InputError('measure-unknown', {
      what: 'a pattern of your own has no usual points of measure',
      allowed: 'a list of what is to be measured',
      place: { field: 'measures' },
    });
  }
  const own = measures && readMeasures(measures.text, measures.file, range.plans, display.unit);
  const spec =
    own === undefined && skirt !== undefined ? skirtSpec(skirt) : patternSpec(range, own ?? []);
  const sample =
    measured === undefined
      ? []
      : deviations(readSample(measured.text, measured.file, spec, display.unit));
  return {
    spec,
    sample,
    findings: [
      ...checkTolerances(spec, display),
      ...checkSample(sample, sampleFits(sample, spec), spec, display),
    ],
  };
}

/** The tables of a spec; that of the sample only where one was measured. */
export function specFiles({ spec, sample }: SpecResult): readonly ResultFile[] {
  return [
    { name: 'spec.csv', text: specTable(spec) },
    { name: 'grade-sheet.csv', text: gradeSheet(spec) },
    ...(sample.length === 0 ? [] : [{ name: 'sample.csv', text: sampleTable(sample, spec) }]),
  ];
}
