/** Whether a closed polygon crosses itself. */
import { pointBounds } from './bounds';
import { boxSearch } from './box-tree';
import type { Point } from './point';
import { cross, distance, subtract } from './point';
import { SAME_PLACE } from '../tolerance';

/**
 * The first pair of sides that properly cross, as the indices of the corners at which they start;
 * undefined for a simple polygon. Sides of no length and sides that only touch do not count.
 */
export function firstCrossing(corners: readonly Point[]): readonly [number, number] | undefined {
  const count = corners.length;
  const sides = corners.map((a, i): readonly [Point, Point] => [a, corners[(i + 1) % count] ?? a]);
  const sidesNear = boxSearch(sides, pointBounds);
  for (const [i, [a, b]] of sides.entries()) {
    for (const k of sidesNear(pointBounds([a, b]))) {
      // Each pair once, and no neighbors, which meet at their joint.
      if (k < i + 2 || (i === 0 && k === count - 1)) continue;
      const [c, d] = sides[k] as readonly [Point, Point];
      if (apart(a, b, c, d) && apart(c, d, a, b)) return [i, k];
    }
  }
  return undefined;
}

/** Whether `c` and `d` lie on different sides of the line through `a` and `b`, both off it. */
function apart(a: Point, b: Point, c: Point, d: Point): boolean {
  const width = distance(a, b);
  if (width <= SAME_PLACE) return false;
  const along = subtract(b, a);
  const left = cross(along, subtract(c, a)) / width;
  const right = cross(along, subtract(d, a)) / width;
  return Math.min(left, right) < -SAME_PLACE && Math.max(left, right) > SAME_PLACE;
}
