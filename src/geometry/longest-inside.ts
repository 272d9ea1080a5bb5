/** Room for a mark along an upright line. */
import type { Point } from './point';

/** A stretch of an upright line. */
export interface Upright {
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
}

/** The longest stretch of the upright line at `x` that lies inside a polygon. */
export function longestInside(corners: readonly Point[], x: number): Upright {
  const crossed = corners
    .flatMap((from, i) => {
      const to = corners[(i + 1) % corners.length] ?? from;
      if (from.x <= x === to.x <= x) return [];
      return [from.y + ((x - from.x) / (to.x - from.x)) * (to.y - from.y)];
    })
    .sort((a, b) => a - b);
  let best: Upright = { x, top: 0, bottom: 0 };
  for (let i = 0; i + 1 < crossed.length; i += 2) {
    const [top = 0, bottom = 0] = crossed.slice(i, i + 2);
    if (bottom - top > best.bottom - best.top) best = { x, top, bottom };
  }
  return best;
}
