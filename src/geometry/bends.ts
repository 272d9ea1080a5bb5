/** How a line that should bend one way bends: its corners, where it turns back, how it waves. */
import type { Point } from './point';
import { cross, dot, length, subtract } from './point';
import type { Segment } from './segment';
import { segmentAt, segmentTangent } from './segment';

/** What is seen along a line. */
export interface Bends {
  /** Degrees by which the direction jumps before each segment but the first; none is negative. */
  readonly corners: readonly number[];
  /**
   * Degrees: the most by which the direction turns against the way in which the line bends, from any
   * place to any later one. Zero for an arc, for a straight line and for a convex polygon.
   */
  readonly turnBack: number;
  /**
   * mm: the farthest that the line lies from a string drawn tight over it from end to end, on the
   * side to which it bulges. Zero where it never turns back; for a dip, how deep that is.
   */
  readonly wave: number;
}

/** Places a segment is looked at: on the short, flat curves of a pattern the error is far below 1 %. */
const PLACES = 64;

/**
 * The bends of segments that follow one another, whose direction turns by less than 180 degrees in
 * all; their ends may lie apart by what darts with unequal legs leave.
 */
export function bendsOf(line: readonly Segment[]): Bends {
  const shares = Array.from({ length: PLACES + 1 }, (_, i) => i / PLACES);
  const directions = line.map((segment) => shares.map((t) => segmentTangent(segment, t)));
  const way = directions.flat();
  const turns = way.slice(1).map((direction, i) => turn(way[i] as Point, direction));
  // A line that bends neither way is held against the way that suits it better.
  const [right, left] = [turnedBack(turns), turnedBack(turns.map((angle) => -angle))];
  const places = line.flatMap((segment) => shares.map((t) => segmentAt(segment, t)));
  return {
    corners: cornersOf(line),
    turnBack: Math.min(right, left),
    wave: waveOf(places, right <= left ? 1 : -1),
  };
}

/** The corners between segments that follow one another, as `Bends` has them. */
export function cornersOf(line: readonly Segment[]): readonly number[] {
  return line.slice(1).map((next, i) => {
    const before = line[i] ?? next;
    return Math.abs(turn(segmentTangent(before, 1), segmentTangent(next, 0)));
  });
}

/** Degrees from one direction to the next, positive clockwise on paper. */
function turn(from: Point, to: Point): number {
  return (Math.atan2(cross(from, to), dot(from, to)) * 180) / Math.PI;
}

/** The largest fall of the sum of the turns below what it has reached. */
function turnedBack(turns: readonly number[]): number {
  let [sum, highest, most] = [0, 0, 0];
  for (const angle of turns) {
    sum += angle;
    highest = Math.max(highest, sum);
    most = Math.max(most, highest - sum);
  }
  return most;
}

/** The farthest place from the string over them, for a line that bends clockwise (1) or not (-1). */
function waveOf(places: readonly Point[], way: 1 | -1): number {
  const [first, last] = [places[0] as Point, places.at(-1) as Point];
  const chord = subtract(last, first);
  const along = (p: Point): number => dot(subtract(p, first), chord);
  const ordered = places.toSorted((a, b) => along(a) - along(b));
  const string: number[] = [];
  const at = (k: number): Point => ordered[string.at(k) ?? 0] as Point;
  ordered.forEach((p, i) => {
    const isInside = (): boolean => way * cross(subtract(at(-1), at(-2)), subtract(p, at(-1))) <= 0;
    while (string.length > 1 && isInside()) string.pop();
    string.push(i);
  });
  let most = 0;
  string.slice(1).forEach((end, k) => {
    const start = string[k] ?? 0;
    const from = ordered[start] as Point;
    const taut = subtract(ordered[end] as Point, from);
    for (const p of ordered.slice(start + 1, end))
      most = Math.max(most, Math.abs(cross(taut, subtract(p, from))) / length(taut));
  });
  return most;
}
