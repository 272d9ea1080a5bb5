/** A curve parallel to a cubic, as one cubic: what a cutter draws a constant depth below an edge. */
import type { CubicPoints } from './cubic';
import type { Point } from './point';
import { add, cross, length, quarterTurn, scale, subtract, unit } from './point';
import type { Cubic } from './segment';

/**
 * The parallel of `cubic` at `depth` mm to the right of its travel (seen on paper). Its ends and
 * the directions there are exact, and so is its speed there; between them it is a fit, good to a
 * small share of a millimeter where the cubic turns gently over its length, as a waist edge does.
 */
export function parallelCubic(cubic: CubicPoints, depth: number): Cubic {
  const { from, leave, arrive, to } = cubic;
  const start = offsetEnd(from, leave, arrive, depth);
  const end = offsetEnd(to, arrive, leave, -depth);
  return { kind: 'cubic', from: start.at, leave: start.handle, arrive: end.handle, to: end.at };
}

/** One end of the parallel, seen from the end itself: its handle and the far one set its curvature. */
function offsetEnd(
  end: Point,
  near: Point,
  far: Point,
  depth: number,
): { readonly at: Point; readonly handle: Point } {
  const handle = subtract(near, end);
  const long = length(handle);
  const curvature = (2 * cross(handle, subtract(far, near))) / (3 * long ** 3);
  const at = add(end, scale(quarterTurn(unit(handle)), depth));
  // The parallel runs as much faster as its radius is longer.
  return { at, handle: add(at, scale(handle, 1 - depth * curvature)) };
}
