/** The points of a line as a drawing has it, some of the ways between them bent. */
import { cubicAt } from '../geometry/cubic';
import type { Point } from '../geometry/point';
import { add, distance, length, scale, subtract } from '../geometry/point';
import { INSIDE_FLATNESS } from '../tolerance';

/** A point of a line, and how the line goes on from it. */
export interface LinePoint extends Point {
  /** The handles of the way to the next point; straight if absent. */
  readonly bend?: readonly [leave: Point, arrive: Point];
  /** Whether the line runs on here without a corner, since it is in the middle of a curve. */
  readonly inner?: true;
}

/** The points carried to other places by a map of the plane; affine, since handles go with it. */
export function mapped(points: readonly LinePoint[], to: (at: Point) => Point): LinePoint[] {
  return points.map(({ x, y, bend, inner }) => ({
    ...to({ x, y }),
    ...(bend && { bend: [to(bend[0]), to(bend[1])] as const }),
    ...(inner && { inner }),
  }));
}

/** An open line traveled the other way. */
export function reversedLine(points: readonly LinePoint[]): LinePoint[] {
  return points.toReversed().map(({ x, y, inner }, i) => {
    const bend = points[points.length - 2 - i]?.bend;
    return {
      x,
      y,
      ...(bend && { bend: [bend[1], bend[0]] as const }),
      ...(inner && { inner }),
    };
  });
}

/** Most chords of one curve. */
const MOST = 64;

/** The line as chords within INSIDE_FLATNESS, in mm; closed if its last point has a next one. */
export function chords(points: readonly LinePoint[], closed: boolean): readonly Point[] {
  const around = closed ? [...points, ...points.slice(0, 1)] : points;
  return around.flatMap(({ x, y, bend }, i): readonly Point[] => {
    const from = { x, y };
    const next = around[i + 1];
    if (bend === undefined || next === undefined) return [from];
    const cubic = { from, leave: bend[0], arrive: bend[1], to: { x: next.x, y: next.y } };
    // A chord leaves its curve by no more than an eighth of the second derivative.
    const turn = (a: Point, b: Point, c: Point): number =>
      6 * length(add(subtract(a, scale(b, 2)), c));
    const most = Math.max(turn(from, bend[0], bend[1]), turn(bend[0], bend[1], cubic.to));
    const count = Math.min(MOST, Math.max(1, Math.ceil(Math.sqrt(most / 8 / INSIDE_FLATNESS))));
    return Array.from({ length: count }, (_, k) => cubicAt(cubic, k / count));
  });
}

/** Whether a line of these points has room inside when it is closed. */
export function enclosesRoom(points: readonly LinePoint[]): boolean {
  const [start] = points;
  if (start === undefined) return false;
  const apart = points.filter((at) => distance(at, start) > 0).length;
  return apart >= 2 || (apart >= 1 && points.some(({ bend }) => bend !== undefined));
}
