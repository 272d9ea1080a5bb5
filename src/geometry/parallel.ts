/** Curves parallel to a cubic: what a cutter draws at a constant distance from an edge. */
import { PARALLEL, SAME_PLACE } from '../tolerance';
import type { CubicPoints } from './cubic';
import { cubicAt, cubicPart, cubicTangent } from './cubic';
import type { Point } from './point';
import { add, cross, distance, length, quarterTurn, scale, subtract, unit } from './point';
import type { Cubic } from './segment';

/** Places between the ends of a fit at which its deviation is measured. */
const PLACES = 8;
/** Halvings after which a fit is taken as it is, so that a cusp cannot loop for ever. */
const DEEPEST = 12;

/**
 * The parallel of `cubic` at `depth` mm to the right of its travel (seen on paper), negative to the
 * left, as a chain of cubics within PARALLEL of it.
 *
 * The true parallel of a cubic is no cubic. Each part is fitted by the cubic that has the
 * parallel's own ends and derivatives there, then held against it at places between, parameter for
 * parameter, which bounds the distance from above; a part that is too far off is halved. The error
 * falls with the fourth power of the length of a part. Where `depth` exceeds the radius on the
 * inner side of a bend, the parallel runs backward between two cusps, and so does the chain.
 */
export function parallelCurve(cubic: CubicPoints, depth: number): readonly Cubic[] {
  const fitted = (start: number, end: number, halvings: number): readonly Cubic[] => {
    const part = cubicPart(cubic, start, end);
    const fit = parallelCubic(part, depth);
    if (halvings === 0 || deviation(part, fit, depth) <= PARALLEL) return [fit];
    const middle = (start + end) / 2;
    return [...fitted(start, middle, halvings - 1), ...fitted(middle, end, halvings - 1)];
  };
  return fitted(0, 1, DEEPEST);
}

/** The farthest in mm that a fit lies from the parallel at the same parameter. */
function deviation(cubic: CubicPoints, fit: CubicPoints, depth: number): number {
  let worst = 0;
  for (let i = 1; i < PLACES; i++) {
    const t = i / PLACES;
    const normal = quarterTurn(unit(cubicTangent(cubic, t)));
    const exact = add(cubicAt(cubic, t), scale(normal, depth));
    worst = Math.max(worst, distance(exact, cubicAt(fit, t)));
  }
  return worst;
}

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
  // A handle on its end leaves the direction to the far one, and no speed.
  if (long <= SAME_PLACE) {
    const at = add(end, scale(quarterTurn(unit(subtract(far, end))), depth));
    return { at, handle: at };
  }
  const curvature = (2 * cross(handle, subtract(far, near))) / (3 * long ** 3);
  const at = add(end, scale(quarterTurn(unit(handle)), depth));
  // The parallel runs as much faster as its radius is longer.
  return { at, handle: add(at, scale(handle, 1 - depth * curvature)) };
}
