/** How wide a shape is over its length: on how much of it, it is wider than a given width. */
import { SAME_PLACE } from '../tolerance';
import type { Polygon } from './flat-outline';

/**
 * The lengths of a shape by its width in mm, what is hollow left out. All arrays are as long: at
 * `width[i]`, rising, `longer[i]` mm of the shape are wider, and `area[i]` square mm lie on those.
 */
export interface Spread {
  readonly width: Float64Array;
  readonly longer: Float64Array;
  readonly area: Float64Array;
}

/** The spread of a polygon whose length runs along y. */
export function spreadOf(corners: Polygon): Spread {
  const ramps = trapezoidsOf(corners).map(({ length, from, to }) => {
    const wide = Math.max(from, to);
    // Straight parts as well widen by a little, so that nothing jumps.
    const narrow = Math.min(from, to, wide - SAME_PLACE);
    return { narrow, wide, steepness: length / (wide - narrow) };
  });
  const bends = ramps
    .flatMap(({ narrow, wide, steepness }) => [
      { width: narrow, steepness: -steepness },
      { width: wide, steepness },
    ])
    .sort((a, b) => b.width - a.width);
  const spread: Spread = {
    width: new Float64Array(bends.length),
    longer: new Float64Array(bends.length),
    area: new Float64Array(bends.length),
  };
  let [width, longer, area, steepness] = [bends[0]?.width ?? 0, 0, 0, 0];
  for (const [k, bend] of bends.entries()) {
    const step = width - bend.width;
    longer += steepness * step;
    area += (steepness * step * (width + bend.width)) / 2;
    steepness += bend.steepness;
    width = bend.width;
    const i = bends.length - 1 - k;
    [spread.width[i], spread.longer[i], spread.area[i]] = [width, longer, area];
  }
  return spread;
}

/** The mm of a shape that are wider than `limit` mm, and the square mm that lie on those. */
export function widerThan(
  { width, longer, area }: Spread,
  limit: number,
): { readonly length: number; readonly area: number } {
  const last = width.length - 1;
  if (last < 0 || limit >= at(width, last)) return { length: 0, area: 0 };
  if (limit <= at(width, 0)) return { length: at(longer, 0), area: at(area, 0) };
  let [low, high] = [0, last];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(width, middle) <= limit) low = middle;
    else high = middle;
  }
  const rise = at(width, high) - at(width, low);
  const part = rise > 0 ? (at(width, high) - limit) / rise : 0;
  const length = part * (at(longer, low) - at(longer, high));
  const between = (length * (at(width, high) + limit)) / 2;
  return { length: at(longer, high) + length, area: at(area, high) + between };
}

function at(values: Float64Array, i: number): number {
  return values[i] ?? 0;
}

/** A part of a shape between two levels: its width there in mm, straight between. */
interface Trapezoid {
  readonly length: number;
  readonly from: number;
  readonly to: number;
}

/**
 * A shape cut across at every corner; what is hollow does not count. Of the sides that a level crosses
 * every second one runs up and the others down, whichever way the corners run.
 */
function trapezoidsOf(corners: Polygon): readonly Trapezoid[] {
  const levels = [...new Set(corners.map(({ y }) => y))].sort((a, b) => a - b);
  return levels.slice(1).map((end, i): Trapezoid => {
    const start = levels[i] ?? end;
    const middle = (start + end) / 2;
    let [from, to] = [0, 0];
    let a = corners.at(-1);
    for (const b of corners) {
      if (a !== undefined && a.y < middle !== b.y < middle) {
        const slope = (b.x - a.x) / (b.y - a.y);
        const way = a.y < b.y ? 1 : -1;
        from += way * (a.x + slope * (start - a.y));
        to += way * (a.x + slope * (end - a.y));
      }
      a = b;
    }
    return { length: end - start, from: Math.abs(from), to: Math.abs(to) };
  });
}
