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
  for (let i = 0; i < count; i++) {
    const a = corners[i] as Point;
    const b = corners[(i + 1) % count] as Point;
    const [left, right] = a.x < b.x ? [a.x, b.x] : [b.x, a.x];
    const [top, bottom] = a.y < b.y ? [a.y, b.y] : [b.y, a.y];
    for (let k = i + 2; k < count; k++) {
      if (i === 0 && k === count - 1) continue;
      const c = corners[k] as Point;
      const d = corners[(k + 1) % count] as Point;
      // Most pairs are far apart: no need to look closer.
      if ((c.x < left && d.x < left) || (c.x > right && d.x > right)) continue;
      if ((c.y < top && d.y < top) || (c.y > bottom && d.y > bottom)) continue;
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
