/** Parallels of cubics without what folds back at their ends, for lines that run on from there. */
import type { CubicPoints } from './cubic';
import { cubicBend, cubicPart, cubicTangent } from './cubic';
import { crossings } from './crossings';
import { parallelCurve } from './parallel';
import { add, cross, distance, length, quarterTurn, scale, unit } from './point';
import type { Line, Segment } from './segment';
import { reversed, segmentPart } from './segment';

/**
 * The parallel of `cubic` at `depth` mm to the right of its travel (seen on paper), negative to the
 * left, as parallelCurve makes it. Where the cubic bends toward that side at an end, tighter than
 * `depth`, its parallel folds back there from a cusp, and lies nearer to the cubic than `depth`;
 * this one ends where it meets the parallel of the end's own tangent instead.
 */
export function forwardParallel(cubic: CubicPoints, depth: number): readonly Segment[] {
  const { start, end } = forwardPart(cubic, depth);
  const chain = parallelCurve(cubicPart(cubic, start, end), depth);
  const ended = end < 1 ? endedAtTangent(chain, cubic, depth) : chain;
  if (start === 0) return ended;
  const { from, leave, arrive, to } = cubic;
  const turned = { from: to, leave: arrive, arrive: leave, to: from };
  return backward(endedAtTangent(backward(ended), turned, -depth));
}

function backward(chain: readonly Segment[]): readonly Segment[] {
  return chain.toReversed().map(reversed);
}

/** A chain that ends at a cusp, as far as the parallel of the tangent at the end of `cubic`. */
function endedAtTangent(
  chain: readonly Segment[],
  cubic: CubicPoints,
  depth: number,
): readonly Segment[] {
  const ahead = unit(cubicTangent(cubic, 1));
  const end = add(cubic.to, scale(quarterTurn(ahead), depth));
  const far = 2 * distance(end, chain.at(-1)?.to ?? end);
  const tangent: Line = { kind: 'line', from: end, to: add(end, scale(ahead, far)) };
  for (let i = chain.length - 1; i >= 0; i--) {
    const segment = chain[i];
    if (segment === undefined) continue;
    const last = crossings(segment, tangent).at(-1);
    if (last !== undefined) return [...chain.slice(0, i), segmentPart(segment, 0, last.t)];
  }
  return chain;
}

/** Places along a cubic at which it is asked which way its parallel runs. */
const LOOKS = 16;
/** Halvings by which a cusp is found. */
const HALVINGS = 40;

/**
 * The parameters between which the parallel of `cubic` at `depth` does not run backward at an end. A
 * parallel that runs backward all along is left whole.
 */
function forwardPart(
  cubic: CubicPoints,
  depth: number,
): { readonly start: number; readonly end: number } {
  const looks = Array.from({ length: LOOKS + 1 }, (_, i) => i / LOOKS);
  const first = looks.findIndex((t) => isForward(cubic, depth, t));
  if (first < 0) return { start: 0, end: 1 };
  const last = looks.findLastIndex((t) => isForward(cubic, depth, t));
  return {
    start: first === 0 ? 0 : cusp(cubic, depth, first / LOOKS, (first - 1) / LOOKS),
    end: last === LOOKS ? 1 : cusp(cubic, depth, last / LOOKS, (last + 1) / LOOKS),
  };
}

/** Between a place where the parallel runs forward and one where it does not. */
function cusp(cubic: CubicPoints, depth: number, forward: number, backward: number): number {
  let [a, b] = [forward, backward];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (a + b) / 2;
    if (isForward(cubic, depth, middle)) a = middle;
    else b = middle;
  }
  return a;
}

function isForward(cubic: CubicPoints, depth: number, t: number): boolean {
  const speed = cubicTangent(cubic, t);
  // The radius is longer than the depth, or the bend is the other way.
  return depth * cross(speed, cubicBend(cubic, t)) < length(speed) ** 3;
}
