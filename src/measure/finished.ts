/** Finished measurements: every point of measure of one size, as a sewer would take it. */
import type { Measure } from '../grade/graded-pattern';
import type { Piece } from '../pattern/piece';
import type { PointOfMeasure, StatedLengths } from './point-of-measure';
import { takeMeasure } from './point-of-measure';

/**
 * Measures one size, in the order of the points. A stated length is left out where the size does not
 * state it. Throws a RangeError for a piece or point that is not there.
 */
export function finishedMeasures(
  points: readonly PointOfMeasure[],
  pieces: readonly Piece[],
  lengths?: StatedLengths,
): readonly Measure[] {
  return points.flatMap((point) => {
    const value = takeMeasure(point, pieces, lengths);
    return value === undefined ? [] : [{ name: point.measure, value }];
  });
}
