/** The grainline of a piece: straight down, or along a waistband, which must not give. */
import { pointBounds } from '../geometry/bounds';
import { longestInside } from '../geometry/longest-inside';
import type { Point, StraightLine } from '../geometry/point';
import { point } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentAt } from '../geometry/segment';

/** Chords for a curve: enough to tell where there is room. */
const CHORDS = 8;
/** Upright lines that are tried, side by side. */
const TRIED = 15;
/** Share of the room that the line takes. */
const TAKEN = 0.6;
/** Share of the longest room that is enough. No tolerance: it places a mark. */
const ENOUGH = 0.75;

/** The grainline inside a closed outline; `across` for a piece whose length lies along the grain. */
export function grainline(outline: readonly Segment[], way: 'down' | 'across'): StraightLine {
  const corners = outline.flatMap((segment) =>
    segment.kind === 'line'
      ? [segment.from]
      : Array.from({ length: CHORDS }, (_, k) => segmentAt(segment, k / CHORDS)),
  );
  const flip = ({ x, y }: Point): Point => (way === 'down' ? point(x, y) : point(y, x));
  const upright = corners.map(flip);
  const { left, right } = pointBounds(upright);
  // From the middle outward, so that the first line with room enough is the nearest to it.
  const levels = Array.from({ length: TRIED }, (_, k) => {
    const step = Math.ceil(k / 2) * (k % 2 === 0 ? 1 : -1);
    return (left + right) / 2 + (step * (right - left)) / (TRIED + 1);
  });
  const rooms = levels.map((x) => longestInside(upright, x));
  const longest = Math.max(...rooms.map(({ top, bottom }) => bottom - top));
  const room = rooms.find(({ top, bottom }) => bottom - top >= ENOUGH * longest);
  const { x, top, bottom } = room ?? { x: left, top: 0, bottom: 0 };
  const spare = ((1 - TAKEN) / 2) * (bottom - top);
  return { from: flip(point(x, top + spare)), to: flip(point(x, bottom - spare)) };
}
