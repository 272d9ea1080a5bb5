/**
 * A shape seen along the cloth: for every place across the cloth, where the shape begins and ends.
 *
 * x runs across the cloth and y along it. A profile fills what is hollow in y, so it covers its
 * shape: profiles that do not overlap hold shapes that do not.
 */
import { SAME_PLACE } from '../tolerance';
import type { Polygon } from './flat-outline';

/** An upright slice of a shape: between two straight lines, given by their value and slope. */
interface Slice {
  readonly start: number;
  readonly end: number;
  /** y at `start`, and change of y a millimeter. */
  readonly near: number;
  readonly nearSlope: number;
  readonly far: number;
  readonly farSlope: number;
}

/** Slices side by side from x = 0 to `width`; the nearest place of the shape is at y = 0. */
export interface Profile {
  readonly width: number;
  readonly height: number;
  readonly slices: readonly Slice[];
}

/** The profile of a polygon whose box has its corner at (0, 0). */
export function profileOf(corners: Polygon): Profile {
  const places = distinct(corners.map(({ x }) => x));
  return {
    width: places.at(-1) ?? 0,
    height: Math.max(...corners.map(({ y }) => y)),
    slices: places.slice(1).map((end, i) => sliceOf(corners, places[i] ?? end, end)),
  };
}

function distinct(values: readonly number[]): readonly number[] {
  const found: number[] = [];
  for (const value of values.toSorted((a, b) => a - b))
    if (value - (found.at(-1) ?? -Infinity) > SAME_PLACE) found.push(value);
  return found;
}

/** No corner lies inside a slice, so its outermost sides are the same all over it. */
function sliceOf(corners: Polygon, start: number, end: number): Slice {
  const middle = (start + end) / 2;
  let near = { middle: Infinity, value: 0, slope: 0 };
  let far = { middle: -Infinity, value: 0, slope: 0 };
  let next = corners.at(-1);
  for (const to of corners) {
    const from = next ?? to;
    next = to;
    if (from.x < middle === to.x < middle) continue;
    const slope = (to.y - from.y) / (to.x - from.x);
    const side = {
      middle: from.y + slope * (middle - from.x),
      value: from.y + slope * (start - from.x),
      slope,
    };
    if (side.middle < near.middle) near = side;
    if (side.middle > far.middle) far = side;
  }
  return {
    start,
    end,
    near: near.value,
    nearSlope: near.slope,
    far: far.value,
    farSlope: far.slope,
  };
}

/** Places strictly between `from` and `to`. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/**
 * Where along the cloth `b`, moved by `shift` across it, cannot lie because it would overlap `a`,
 * which lies at 0: the exact slice, at that shift, of the no-fit region of the two profiles. It is
 * one span, as profiles are connected and have no hollows in y. Undefined where they pass freely.
 */
export function blocked(a: Profile, b: Profile, shift: number): Interval | undefined {
  if (shift >= a.width - SAME_PLACE || shift + b.width <= SAME_PLACE) return undefined;
  let from = Infinity;
  let to = -Infinity;
  let i = 0;
  let k = 0;
  for (;;) {
    const p = a.slices[i];
    const q = b.slices[k];
    if (p === undefined || q === undefined) break;
    const qStart = q.start + shift;
    const qEnd = q.end + shift;
    const start = p.start > qStart ? p.start : qStart;
    const end = p.end < qEnd ? p.end : qEnd;
    if (end - start > SAME_PLACE) {
      // Both limits are straight from start to end, so one of these is outermost.
      const low = p.near + p.nearSlope * (start - p.start) - q.far - q.farSlope * (start - qStart);
      const high = p.far + p.farSlope * (start - p.start) - q.near - q.nearSlope * (start - qStart);
      const lowEnd = low + (p.nearSlope - q.farSlope) * (end - start);
      const highEnd = high + (p.farSlope - q.nearSlope) * (end - start);
      if (low < from) from = low;
      if (lowEnd < from) from = lowEnd;
      if (high > to) to = high;
      if (highEnd > to) to = highEnd;
    }
    if (p.end < qEnd) i++;
    else k++;
  }
  return from < to ? { from, to } : undefined;
}
