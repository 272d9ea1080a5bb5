/** The spec of a graded pattern as a pure function, and a measured sample held against it. */
import type { Finding } from '../check/finding';
import { notReadFindings } from '../check/not-read';
import { checkSample, checkTolerances } from '../check/spec';
import { InputError } from '../errors';
import { makeSpec } from '../measure/make-spec';
import { readMeasures } from '../measure/read-measures';
import type { Deviation } from '../measure/sample';
import { deviations, readSample, sampleFits } from '../measure/sample';
import { skirtSpecPoints } from '../measure/skirt-points';
import type { Spec } from '../measure/spec';
import { toleranceSettings } from '../measure/tolerances';
import { zipLengths } from '../measure/zip-lengths';
import type { GradeResult } from './grade-result';
import type { NamedText } from './requests';

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
 * Takes the points of measure in every size: those asked for, else those that the sizes were measured
 * by. Throws InputError for lists that cannot be used.
 */
export function gradeSpec(
  { range, display, pattern }: Pick<GradeResult, 'range' | 'display' | 'pattern'>,
  { measures, measured }: SpecRequest,
): SpecResult {
  const isMeasured = range.sizes.every((size) => size.measures.length > 0);
  if (measures === undefined && !isMeasured) {
    throw new InputError('measure-unknown', {
      what: 'a pattern of your own has no usual points of measure',
      allowed: 'a list of what is to be measured',
      place: { field: 'measures' },
    });
  }
  const { plans, rules } = range;
  // Where lengths are shown in another unit than the pattern's, a bare number may be in either.
  const unit = display.unit === pattern.unit ? pattern.unit : undefined;
  const { points, unread } =
    measures === undefined
      ? { points: skirtSpecPoints(plans), unread: [] }
      : readMeasures(measures.text, measures.file, plans, unit);
  const sizes = range.sizes.map((size) => ({
    ...size,
    lengths: zipLengths(size.pieces, size.parameters),
  }));
  const settings = toleranceSettings(sizes[rules.base]?.parameters, pattern.unit);
  const spec = makeSpec({ sizes, rules }, points, settings);
  const read = measured && readSample(measured.text, measured.file, spec, unit);
  const sample = deviations(read?.values ?? []);
  return {
    spec,
    sample,
    findings: [
      // Between the base and a blend there is no step.
      ...(range.blend === undefined ? checkTolerances(spec, display) : []),
      ...notReadFindings([...unread, ...(read?.unread ?? [])]),
      ...checkSample(sample, sampleFits(sample, spec), spec, display),
    ],
  };
}
