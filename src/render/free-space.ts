/** Finds room for words inside a piece, where no line of any size would run through them. */
import type { Box } from '../geometry/bounds';
import { boxHolds, boxesOverlap, joinBoxes, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { between, point } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentAt } from '../geometry/segment';
import type { Group } from './scene';
import type { Sketch } from './sketch';
import { heightOf, placedAt, widthOf } from './sketch';

/** Outlines of one piece in all sizes, and the lines drawn within them, as chains of points. */
export interface Surroundings {
  readonly outlines: readonly (readonly Point[])[];
  readonly lines: readonly (readonly Point[])[];
}

/** Chords for a curve: on a side seam they stay within a few tenths of a millimeter. */
const CHORDS = 12;
/** mm between the places that are tried. */
const STEP = 6;
/** mm that words keep from any line. */
const CLEARANCE = 3;

/** Segments as one chain of points; curves become chords. */
export function flattened(segments: readonly Segment[]): readonly Point[] {
  return segments.flatMap((segment, i) => {
    const start = i === 0 ? [segment.from] : [];
    if (segment.kind === 'line') return [...start, segment.to];
    return [
      ...start,
      ...Array.from({ length: CHORDS }, (_, k) => segmentAt(segment, (k + 1) / CHORDS)),
    ];
  });
}

/** Puts sketches into the room of one piece, each where the ones before left it free. */
export interface Room {
  /**
   * Puts the first of `choices` that fits, as near to `near` as it can: inside every outline, and
   * clear of all lines and of what is there already. Undefined if none of them fits.
   */
  readonly put: (choices: readonly Sketch[], near: Point) => Group | undefined;
  /** Keeps a box free. */
  readonly reserve: (box: Box) => void;
}

export function roomIn(around: Surroundings): Room {
  const taken: Box[] = [];
  return {
    put: (choices, near) => {
      for (const sketch of choices) {
        const width = widthOf(sketch) + 2 * CLEARANCE;
        const height = heightOf(sketch) + 2 * CLEARANCE;
        const box = findRoom(around, taken, width, height, near);
        if (box === undefined) continue;
        taken.push(box);
        return placedAt(sketch, point(box.left + CLEARANCE, box.top + CLEARANCE));
      }
      return undefined;
    },
    reserve: (box) => {
      taken.push(box);
    },
  };
}

/** The free box of `width` x `height` mm whose center is nearest to `near`, give or take a step. */
function findRoom(
  { outlines, lines }: Surroundings,
  taken: readonly Box[],
  width: number,
  height: number,
  near: Point,
): Box | undefined {
  const all = joinBoxes(outlines.map(pointBounds));
  const rings = Math.ceil(Math.max(all.right - all.left, all.bottom - all.top) / STEP);
  for (let ring = 0; ring <= rings; ring++) {
    for (const { x, y } of square(ring)) {
      const center = point(near.x + x * STEP, near.y + y * STEP);
      const box: Box = {
        left: center.x - width / 2,
        top: center.y - height / 2,
        right: center.x + width / 2,
        bottom: center.y + height / 2,
      };
      if (
        boxHolds(all, box) &&
        !taken.some((other) => boxesOverlap(box, other)) &&
        isClear(box, [...outlines, ...lines]) &&
        outlines.every((outline) => isInside(center, outline))
      ) {
        return box;
      }
    }
  }
  return undefined;
}

/** Whether none of the chains of points runs through the box. */
export function isClear(box: Box, chains: readonly (readonly Point[])[]): boolean {
  return chains.every((chain) =>
    chain.every((to, i) => {
      const from = chain[i - 1];
      return from === undefined || !crosses(from, to, box);
    }),
  );
}

/** Lattice points on the border of the square from -ring to ring, those on the axes first. */
function square(ring: number): readonly Point[] {
  if (ring === 0) return [point(0, 0)];
  const border: Point[] = [];
  for (let k = 0; k <= ring; k++) {
    for (const along of k === 0 ? [0] : [k, -k]) {
      border.push(point(along, ring), point(along, -ring));
      if (k < ring) border.push(point(ring, along), point(-ring, along));
    }
  }
  return border;
}

/** Whether a chord has a point in the open box: what is left of it after clipping at each side. */
function crosses(from: Point, to: Point, { left, top, right, bottom }: Box): boolean {
  if (Math.max(from.x, to.x) <= left || Math.min(from.x, to.x) >= right) return false;
  if (Math.max(from.y, to.y) <= top || Math.min(from.y, to.y) >= bottom) return false;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  let start = 0;
  let end = 1;
  for (const [speed, low, high] of [
    [dx, left - from.x, right - from.x],
    [dy, top - from.y, bottom - from.y],
  ] as const) {
    if (speed === 0) continue;
    start = Math.max(start, Math.min(low / speed, high / speed));
    end = Math.min(end, Math.max(low / speed, high / speed));
  }
  return start < end;
}

/** Whether a point lies inside a closed chain: a ray from it crosses the chain an odd number of times. */
function isInside({ x, y }: Point, chain: readonly Point[]): boolean {
  let inside = false;
  chain.forEach((to, i) => {
    const from = chain[i - 1];
    if (from === undefined || from.y > y === to.y > y) return;
    if (x < between(from, to, (y - from.y) / (to.y - from.y)).x) inside = !inside;
  });
  return inside;
}
