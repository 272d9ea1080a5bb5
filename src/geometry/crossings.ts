/** Where two segments cross each other. */
import { CHORD_FLATNESS, PARALLEL_LINES, SAME_PLACE, SHORTEST_PART } from '../tolerance';
import type { Box } from './bounds';
import { boxesMeet, controlBounds, pointBounds } from './bounds';
import type { Point } from './point';
import { between, cross, distance, length, subtract } from './point';
import type { Segment } from './segment';
import { controlPoints, segmentAt, segmentTangent } from './segment';

/** One crossing: its parameter on each of the two segments, and its place. */
export interface Crossing {
  readonly t: number;
  readonly u: number;
  readonly at: Point;
}

/** Chords beyond its end at which one may cross another: curves at a small angle do so elsewhere. */
const OVERSHOOT = 1;
const NEWTON_STEPS = 8;

/**
 * Every place where the segments meet, ends included, in the order of the first one. Segments that
 * run along each other have none. Cubics are halved down to chords, whose crossing is then made
 * exact by Newton's method.
 */
export function crossings(a: Segment, b: Segment): readonly Crossing[] {
  if (!boxesMeet(controlBounds(a), controlBounds(b))) return [];
  const found: Crossing[] = [];
  const search = (one: Part, other: Part): void => {
    if (!boxesMeet(one.box, other.box)) return;
    // The longer part is halved, so that boxes shrink alike and most pairs fall apart early.
    if (isBent(one) || isBent(other)) {
      if (diagonal(one) >= diagonal(other)) for (const half of halves(one)) search(half, other);
      else for (const half of halves(other)) search(one, half);
    } else {
      const start = chordsCross(one, other);
      const exact = start && refined(a, b, start);
      if (exact !== undefined && !found.some(({ at }) => distance(at, exact.at) <= SAME_PLACE))
        found.push(exact);
    }
  };
  search(partOf(controlPoints(a), 0, 1), partOf(controlPoints(b), 0, 1));
  return found.sort((x, y) => x.t - y.t);
}

/** A stretch of a segment between two of its parameters. */
interface Part {
  readonly start: number;
  readonly end: number;
  readonly from: Point;
  readonly to: Point;
  /** Its own control points; a line has its ends alone. */
  readonly points: readonly Point[];
  /** The box around the control points. */
  readonly box: Box;
}

function partOf(points: readonly Point[], start: number, end: number): Part {
  const [from, to] = [points[0] as Point, points.at(-1) as Point];
  return { start, end, from, to, points, box: pointBounds(points) };
}

/** The square of what lies between the ends of a part's box, corner to corner. */
function diagonal({ box }: Part): number {
  const [across, down] = [box.right - box.left, box.bottom - box.top];
  return across * across + down * down;
}

/** Whether a handle lies off the chord, so that a part has to be halved. */
function isBent({ points, from, to, start, end }: Part): boolean {
  const [, leave, arrive] = points;
  if (leave === undefined || arrive === undefined || points.length === 2) return false;
  if (end - start < SHORTEST_PART) return false;
  const chord = subtract(to, from);
  const long = length(chord);
  const off = (p: Point): number =>
    long <= SAME_PLACE ? distance(p, from) : Math.abs(cross(chord, subtract(p, from))) / long;
  return off(leave) > CHORD_FLATNESS || off(arrive) > CHORD_FLATNESS;
}

/** Both halves of a part, whose points are middles of middles (de Casteljau). */
function halves({ from, to, points, start, end }: Part): readonly [Part, Part] {
  const half = (start + end) / 2;
  const [, leave, arrive] = points;
  if (leave === undefined || arrive === undefined || points.length === 2) {
    const at = between(from, to, 0.5);
    return [partOf([from, at], start, half), partOf([at, to], half, end)];
  }
  const middle = between(leave, arrive, 0.5);
  const [first, last] = [between(from, leave, 0.5), between(arrive, to, 0.5)];
  const [before, after] = [between(first, middle, 0.5), between(middle, last, 0.5)];
  const at = between(before, after, 0.5);
  return [partOf([from, first, before, at], start, half), partOf([at, after, last, to], half, end)];
}

/** Parameters on the whole segments at which the chords of two parts cross, or nearly do. */
function chordsCross(one: Part, other: Part): readonly [number, number] | undefined {
  const along = subtract(one.to, one.from);
  const across = subtract(other.to, other.from);
  const turn = cross(along, across);
  if (Math.abs(turn) <= PARALLEL_LINES * length(along) * length(across)) return undefined;
  const gap = subtract(other.from, one.from);
  const t = cross(gap, across) / turn;
  const u = cross(gap, along) / turn;
  const within = (share: number): boolean => share >= -OVERSHOOT && share <= 1 + OVERSHOOT;
  if (!within(t) || !within(u)) return undefined;
  return [one.start + t * (one.end - one.start), other.start + u * (other.end - other.start)];
}

function refined(a: Segment, b: Segment, start: readonly [number, number]): Crossing | undefined {
  let [t, u] = start;
  for (let i = 0; i < NEWTON_STEPS; i++) {
    const gap = subtract(segmentAt(b, u), segmentAt(a, t));
    const [along, across] = [segmentTangent(a, t), segmentTangent(b, u)];
    const turn = cross(along, across);
    if (turn === 0) return undefined;
    const before = [t, u];
    t += cross(gap, across) / turn;
    u += cross(gap, along) / turn;
    if (t === before[0] && u === before[1]) break;
  }
  const [onA, onB] = [atEnds(a, t), atEnds(b, u)];
  if (onA === undefined || onB === undefined) return undefined;
  const at = segmentAt(a, onA);
  return distance(at, segmentAt(b, onB)) <= SAME_PLACE ? { t: onA, u: onB, at } : undefined;
}

/** A parameter moved onto an end that it misses by less than SAME_PLACE; undefined beyond. */
function atEnds(segment: Segment, t: number): number | undefined {
  const end = t < 0.5 ? 0 : 1;
  if (distance(segmentAt(segment, t), segmentAt(segment, end)) <= SAME_PLACE) return end;
  return t > 0 && t < 1 ? t : undefined;
}
