/** Whether a piece grows apart everywhere: in a larger body no part of it is narrower or shorter. */
import type { Point } from '../../geometry/point';
import type { Axis } from '../../rule-sheet/rule-sheet';
import { SEAM_MATCH, SEAM_WARNING } from '../../tolerance';
import type { Piece } from '../../pattern/piece';
import { misfit } from './misfit';

/** mm by which two points may near each other, and what it weighs, in nats for each point. */
const NEARING = { usual: 1, weight: 2 };

/** Whether the larger sizes are farther from the base in this direction: 1, -1, or 0 for neither. */
export type Growing = (axis: Axis, size: number) => number;

/**
 * What way most of a garment grows: each two points of a piece vote by whether they part. One rule that
 * goes the other way, and what is drawn from it, is outvoted by all others.
 */
export function growing(sizes: readonly (readonly Piece[])[], base: number): Growing {
  const from = sizes[base] ?? [];
  const ways = sizes.map((pieces) => {
    const vote = { x: 0, y: 0 };
    pieces.forEach(({ points }, p) => {
      for (const axis of ['x', 'y'] as const)
        for (const [i, j] of pairsAlong(from[p]?.points ?? [], axis)) {
          const parted = apartBy(points, i, j, axis) - apartBy(from[p]?.points ?? [], i, j, axis);
          if (Math.abs(parted) > SEAM_MATCH) vote[axis] += Math.sign(parted);
        }
    });
    return { x: Math.sign(vote.x), y: Math.sign(vote.y) };
  });
  return (axis, size) => ways[size]?.[axis] ?? 0;
}

function apartBy(points: readonly Point[], i: number, j: number, axis: Axis): number {
  return (points[i]?.[axis] ?? NaN) - (points[j]?.[axis] ?? NaN);
}

/** All pairs of points of which the first lies farther along an axis. */
function pairsAlong(
  points: readonly Point[],
  axis: Axis,
): readonly (readonly [far: number, near: number])[] {
  return points.flatMap((a, i) =>
    points.flatMap((b, j) => (a[axis] - b[axis] > SEAM_WARNING ? [[i, j] as const] : [])),
  );
}

/** What speaks against a piece whose points near each other where the garment grows, in nats. */
export function nearing(
  base: Piece,
  moves: (point: number) => readonly Point[] | undefined,
  sizes: number,
  grows: Growing,
): number {
  let sum = 0;
  const rules = base.points.map((_, i) => moves(i));
  for (const axis of ['x', 'y'] as const)
    for (const [i, j] of pairsAlong(base.points, axis))
      for (let size = 0; size < sizes; size++) {
        const [own, other] = [rules[i]?.[size], rules[j]?.[size]];
        if (own === undefined || other === undefined) continue;
        const wider = grows(axis, size) * (own[axis] - other[axis]);
        if (wider < 0) sum += misfit(wider, NEARING.usual);
      }
  return (NEARING.weight * sum) / Math.max(1, (sizes - 1) * (base.points.length - 1));
}
