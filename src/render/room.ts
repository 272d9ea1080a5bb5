/** Finds room for words inside a piece, where no line of any size would run through them. */
import type { Box } from '../geometry/bounds';
import { boxHolds, boxesOverlap } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Chain, Chord } from './chords';
import { isCrossed, isInside } from './chords';
import type { NestedPiece } from './nested-piece';
import type { Group } from './scene';
import type { Sketch } from './sketch';
import { heightOf, placedAt, widthOf } from './sketch';

/** mm between the places that are tried. */
const STEP = 6;
/** mm that words keep from any line. */
const CLEARANCE = 3;

/** Choices for one thing, the best first, and where it should be. */
export interface SketchChoices {
  readonly choices: Iterable<Sketch>;
  readonly near: Point;
  /** mm above or below it at most that they may stand; anywhere without. */
  readonly reach?: number;
}

/** Puts sketches into the room of one piece, each where the ones before left it free. */
export interface Room {
  /**
   * Puts the first of `choices` that fits, as near to `near` as it can: inside every outline, and
   * clear of all lines and of what is there already. Undefined if none of them fits
   * within `reach` mm above or below.
   */
  readonly put: (choices: Iterable<Sketch>, near: Point, reach?: number) => Group | undefined;
  /**
   * Puts one of the choices of each part, all of them or none: a later part that finds no room makes
   * the parts before it give way, the nearest one first.
   */
  readonly putTogether: (parts: readonly SketchChoices[]) => readonly Group[] | undefined;
  /** Keeps a box free. */
  readonly reserve: (box: Box) => void;
}

/** The room of a piece with nothing put into it yet. */
export function roomIn(nested: NestedPiece): Room {
  const taken: Box[] = [];
  const putTogether = ([first, ...rest]: readonly SketchChoices[]):
    | readonly Group[]
    | undefined => {
    if (first === undefined) return [];
    for (const sketch of first.choices) {
      const width = widthOf(sketch) + 2 * CLEARANCE;
      const height = heightOf(sketch) + 2 * CLEARANCE;
      const box = freeBox(nested, taken, { width, height }, first.near, first.reach);
      if (box === undefined) continue;
      taken.push(box);
      const others = putTogether(rest);
      if (others !== undefined)
        return [placedAt(sketch, point(box.left + CLEARANCE, box.top + CLEARANCE)), ...others];
      taken.pop();
    }
    return undefined;
  };
  return {
    put: (choices, near, reach = Infinity) => putTogether([{ choices, near, reach }])?.[0],
    putTogether,
    reserve: (box) => {
      taken.push(box);
    },
  };
}

/** The free box of `width` x `height` mm with its center nearest to `near`, give or take a step. */
function freeBox(
  nested: NestedPiece,
  taken: readonly Box[],
  { width, height }: { readonly width: number; readonly height: number },
  near: Point,
  reach = Infinity,
): Box | undefined {
  const { box: all } = nested;
  if (width > all.right - all.left || height > all.bottom - all.top) return undefined;
  const rings = Math.ceil(Math.max(all.right - all.left, all.bottom - all.top) / STEP);
  // Steps from `near`, with their signs, beyond which a box would surely stick out of the piece.
  const west = Math.floor((all.left - near.x + width / 2) / STEP);
  const east = Math.ceil((all.right - near.x - width / 2) / STEP);
  const north = Math.max(
    Math.floor((all.top - near.y + height / 2) / STEP),
    Math.ceil(-reach / STEP),
  );
  const south = Math.min(
    Math.ceil((all.bottom - near.y - height / 2) / STEP),
    Math.floor(reach / STEP),
  );
  const across = Math.max(-west, east);
  const down = Math.max(-north, south);
  const isFree = freedom(nested, taken);
  const tried = (right: number, below: number): Box | undefined => {
    if (right < west || right > east || below < north || below > south) return undefined;
    const left = near.x + right * STEP - width / 2;
    const top = near.y + below * STEP - height / 2;
    const box: Box = { left, top, right: left + width, bottom: top + height };
    return isFree(box) ? box : undefined;
  };
  // Squares around `near`, one step wider each time, from the middles of their sides outwards.
  for (let ring = 0; ring <= rings; ring++) {
    // Of a ring that is wider than the piece only the sides that lie in it are walked.
    const last = Math.max(ring <= down ? across : -1, ring <= across ? down : -1);
    for (let k = 0; k <= Math.min(ring, last); k++) {
      const found =
        tried(k, ring) ??
        tried(k, -ring) ??
        tried(-k, ring) ??
        tried(-k, -ring) ??
        tried(ring, k) ??
        tried(-ring, k) ??
        tried(ring, -k) ??
        tried(-ring, -k);
      if (found !== undefined) return found;
    }
  }
  return undefined;
}

/** Tells of a box whether it lies inside every outline, clear of all lines and of what is taken. */
function freedom(
  { outlines, chords, box: all }: NestedPiece,
  taken: readonly Box[],
): (box: Box) => boolean {
  // What was in the way of one box is most often in the way of the next, a step away.
  let last: Chord | undefined;
  let outside: Chain | undefined;
  return (box) => {
    if (!boxHolds(all, box) || (last !== undefined && isCrossed(box, last))) return false;
    if (taken.some((other) => boxesOverlap(box, other))) return false;
    const x = (box.left + box.right) / 2;
    const y = (box.top + box.bottom) / 2;
    if (outside !== undefined && !isInside(x, y, outside)) return false;
    const without = outlines.find((outline) => !isInside(x, y, outline));
    outside = without ?? outside;
    if (without !== undefined) return false;
    const blocking = chords.find((chord) => isCrossed(box, chord));
    last = blocking ?? last;
    return blocking === undefined;
  };
}
