/** How wide a piece is on a level. */
import { crossingsAtLevel } from '../geometry/level';
import { point } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { windingNumber } from '../geometry/winding';
import { BESIDE_LINE, SAME_PLACE } from '../tolerance';
import type { Piece } from './piece';
import { outlineSegments } from './piece';

/**
 * mm of a piece that lie on the level `y`, open darts left out; `from` leaves out what lies left of
 * that x, such as a vent beyond the center line. Zero where the level misses the piece, NaN where
 * the level or the outline on it is no number.
 */
export function widthAt(piece: Piece, level: number, from = -Infinity): number {
  return widthAcross(outlineSegments(piece), level, from);
}

/** The same for a piece's outline, which is made once for many levels. */
export function widthAcross(loop: readonly Segment[], level: number, from = -Infinity): number {
  if (Number.isNaN(level)) return NaN;
  const crossed = [...crossingsAtLevel(loop, level)].sort((a, b) => a - b);
  if (crossed.some(Number.isNaN)) return NaN;
  return crossed.slice(1).reduce((sum, right, i) => {
    const left = Math.max(crossed[i] ?? right, from);
    if (right - left <= SAME_PLACE) return sum;
    return isIn(loop, (left + right) / 2, level) ? sum + right - left : sum;
  }, 0);
}

/** Inside, or on an edge that runs along the level and has the piece on one of its sides. */
function isIn(loop: readonly Segment[], x: number, level: number): boolean {
  return [-BESIDE_LINE, BESIDE_LINE].some(
    (off) => windingNumber(loop, point(x, level + off)) !== 0,
  );
}
