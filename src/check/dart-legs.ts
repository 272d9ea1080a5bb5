/** How grave it is that the legs of a dart differ, which are sewn together. */
import { distance } from '../geometry/point';
import type { DartEdge, Piece } from '../pattern/piece';
import { pointOf } from '../pattern/piece';
import { DART_LEGS } from '../tolerance';
import type { Severity } from './finding';
import { seamSeverity } from './seam-severity';

/** Lengths in mm of the legs, the first in the order of the outline first. */
export function dartLegs(piece: Piece, dart: DartEdge): readonly [number, number] {
  const tip = pointOf(piece, dart.tip);
  return [distance(pointOf(piece, dart.from), tip), distance(pointOf(piece, dart.to), tip)];
}

/**
 * For legs that differ by `apart` mm, and by `exactly` mm before rounding. What only rounding has made
 * of them is a seam that is eased in; it does not fail.
 */
export function legSeverity(apart: number, exactly: number): Severity {
  if (Math.abs(apart) <= DART_LEGS) return 'ok';
  if (!(Math.abs(exactly) <= DART_LEGS)) return 'fail';
  const severity = seamSeverity(Math.abs(apart));
  return severity === 'fail' ? 'warning' : severity;
}
