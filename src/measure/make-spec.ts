/** The spec of any graded pattern from its points of measure. */
import type { Piece } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';
import type { PointOfMeasure, StatedLengths } from './point-of-measure';
import { takeMeasure } from './point-of-measure';
import type { Spec, SpecRow, Taken } from './spec';
import { growthOf } from '../rule-sheet/moves-and-steps';
import type { ToleranceSettings } from './tolerances';
import { USUAL_SOURCE, USUAL_TOLERANCES, usualTolerance } from './tolerances';

/** A size to be measured, with the lengths that it states. */
export interface MeasuredSize {
  readonly label: string;
  readonly pieces: readonly Piece[];
  readonly lengths?: StatedLengths;
}

/** What of a graded pattern a spec is made from. */
export interface MeasuredPattern {
  /** From the smallest to the largest. */
  readonly sizes: readonly MeasuredSize[];
  /** `base` is the place of the base size among them. */
  readonly rules: { readonly base: number };
}

/**
 * Takes every point of measure in every size; a stated length that not every size states has no
 * row. Throws a RangeError for a piece or point that is not there.
 */
export function makeSpec(
  { sizes, rules }: MeasuredPattern,
  points: readonly PointOfMeasure[],
  settings: ToleranceSettings = USUAL_TOLERANCES,
): Spec {
  const rows = points.flatMap((point): SpecRow | [] => {
    const { code, measure, how, taken, group, tolerance } = point;
    const values = sizes.flatMap(
      ({ pieces, lengths }) => takeMeasure(point, pieces, lengths) ?? [],
    );
    if (values.length < sizes.length) return [];
    return {
      code,
      measure,
      how,
      taken,
      values,
      tolerance: tolerance ?? usualTolerance(group, taken, leastStep(values, taken), settings),
      source: tolerance === undefined ? USUAL_SOURCE : 'as stated with the points of measure',
    };
  });
  return { sizes: sizes.map(({ label }) => label), base: rules.base, rows };
}

/** The smallest step in mm that is no standing still, all round; zero if nothing grows. */
function leastStep(values: readonly number[], taken: Taken): number {
  const steps = growthOf(values)
    .map(Math.abs)
    .filter((step) => step > SAME_PLACE);
  return steps.length === 0 ? 0 : Math.min(...steps) * (taken === 'flat' ? 2 : 1);
}
