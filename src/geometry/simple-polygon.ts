/** Whether a closed polygon crosses itself. */
import type { Point } from './point';
import { cross, distance, subtract } from './point';
import { SAME_PLACE } from '../tolerance';

/**
 * The first pair of sides that properly cross, as the indices of the corners at which they start;
 * undefined for a simple polygon. Sides of no length and sides that only touch do not count.
 */
export function firstCrossing(corners: readonly Point[]): readonly [number, number] | undefined {
  const count = corners.length;
  const side = (i: number): readonly [Point, Point] => [
    corners[i] as Point,
    corners[(i + 1) % count] as Point,
  ];
  for (let i = 0; i < count; i++) {
    for (let k = i + 2; k < count; k++) {
      if (i === 0 && k === count - 1) continue;
      if (properlyCross(side(i), side(k))) return [i, k];
    }
  }
  return undefined;
}

function properlyCross([a, b]: readonly [Point, Point], [c, d]: readonly [Point, Point]): boolean {
  return apart(a, b, c, d) && apart(c, d, a, b);
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
