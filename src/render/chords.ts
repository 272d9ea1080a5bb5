/** Outlines as straight chords, for asking whether anything is in the way of a box. */
import type { Box } from '../geometry/bounds';
import { pointBounds } from '../geometry/bounds';
import { boxProbe } from '../geometry/box-tree';
import type { Point } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentAt } from '../geometry/segment';
import type { Shape } from './scene';

/** Chords for a curve: on a side seam they stay within a few tenths of a millimeter. */
const CHORDS = 12;

/** Points joined by straight lines. */
export type Chain = readonly Point[];

/** A straight line without a direction. */
export interface Chord {
  readonly from: Point;
  readonly to: Point;
}

/** Segments as one chain, in which curves have become chords. */
export function flattened(segments: readonly Segment[]): Chain {
  const chain: Point[] = segments.slice(0, 1).map(({ from }) => from);
  for (const segment of segments) {
    if (segment.kind === 'line') chain.push(segment.to);
    else for (let k = 1; k <= CHORDS; k++) chain.push(segmentAt(segment, k / CHORDS));
  }
  return chain;
}

/** The straight lines of all chains. */
export function chordsOf(chains: readonly Chain[]): readonly Chord[] {
  const chords: Chord[] = [];
  for (const chain of chains) {
    let from: Point | undefined;
    for (const to of chain) {
      if (from !== undefined) chords.push({ from, to });
      from = to;
    }
  }
  return chords;
}

/** Whether a chord has a point in the open box. */
export function isCrossed({ left, top, right, bottom }: Box, { from, to }: Chord): boolean {
  const { x: x1, y: y1 } = from;
  const { x: x2, y: y2 } = to;
  if ((x1 <= left && x2 <= left) || (x1 >= right && x2 >= right)) return false;
  if ((y1 <= top && y2 <= top) || (y1 >= bottom && y2 >= bottom)) return false;
  // The parameters between which the chord is within left and right, then within top and bottom.
  const dx = x2 - x1;
  const dy = y2 - y1;
  let start = 0;
  let end = 1;
  if (dx !== 0) {
    start = Math.max(start, Math.min((left - x1) / dx, (right - x1) / dx));
    end = Math.min(end, Math.max((left - x1) / dx, (right - x1) / dx));
  }
  if (dy !== 0) {
    start = Math.max(start, Math.min((top - y1) / dy, (bottom - y1) / dy));
    end = Math.min(end, Math.max((top - y1) / dy, (bottom - y1) / dy));
  }
  return start < end;
}

/** Whether none of the chords has a point in the open box. */
export function isClear(box: Box, chords: readonly Chord[]): boolean {
  for (const chord of chords) if (isCrossed(box, chord)) return false;
  return true;
}

/** As `isClear`, for so many boxes that it pays to find the chords near each. */
export function clearOf(chords: readonly Chord[]): (box: Box) => boolean {
  const isNear = boxProbe(chords, ({ from, to }) => pointBounds([from, to]));
  return (box) => !isNear(box, (i) => isCrossed(box, chords[i] as Chord));
}

/** Whether (x, y) lies inside a closed chain: a ray from it crosses the chain an odd number of times. */
export function isInside(x: number, y: number, chain: Chain): boolean {
  let inside = false;
  let from: Point | undefined;
  for (const to of chain) {
    if (from !== undefined && from.y > y !== to.y > y) {
      const crossing = from.x + ((to.x - from.x) * (y - from.y)) / (to.y - from.y);
      if (x < crossing) inside = !inside;
    }
    from = to;
  }
  return inside;
}

/** The lines of shapes that are in no group. */
export function chordsIn(shapes: readonly Shape[]): readonly Chord[] {
  return shapes.flatMap((shape) =>
    shape.kind === 'path' ? chordsOf(shape.segments.map((segment) => flattened([segment]))) : [],
  );
}
