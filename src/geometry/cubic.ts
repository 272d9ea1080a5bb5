/** Cubic Bézier curves: position, direction, exact arc length, crossing with a level. */
import type { Point } from './point';
import { ARC_LENGTH } from '../tolerance';

/** Four control points; see `Cubic` in segment.ts for their names. */
export interface CubicPoints {
  readonly from: Point;
  readonly leave: Point;
  readonly arrive: Point;
  readonly to: Point;
}

/**
 * The point of the curve at parameter `t`, from 0 at `from` to 1 at `to`; not a share of its
 * length.
 */
export function cubicAt({ from, leave, arrive, to }: CubicPoints, t: number): Point {
  const s = 1 - t;
  const a = s * s * s;
  const b = 3 * s * s * t;
  const c = 3 * s * t * t;
  const d = t * t * t;
  return {
    x: a * from.x + b * leave.x + c * arrive.x + d * to.x,
    y: a * from.y + b * leave.y + c * arrive.y + d * to.y,
  };
}

/** First derivative; at an end whose handle sits on the end point, the chord that decides it. */
export function cubicTangent({ from, leave, arrive, to }: CubicPoints, t: number): Point {
  const s = 1 - t;
  const a = 3 * s * s;
  const b = 6 * s * t;
  const c = 3 * t * t;
  const x = a * (leave.x - from.x) + b * (arrive.x - leave.x) + c * (to.x - arrive.x);
  const y = a * (leave.y - from.y) + b * (arrive.y - leave.y) + c * (to.y - arrive.y);
  if (x !== 0 || y !== 0) return { x, y };
  return t < 0.5
    ? { x: arrive.x - from.x, y: arrive.y - from.y }
    : { x: to.x - leave.x, y: to.y - leave.y };
}

/** Second derivative: how fast the first one changes, from which a curve's bend follows. */
export function cubicBend({ from, leave, arrive, to }: CubicPoints, t: number): Point {
  const a = 6 * (1 - t);
  const b = 6 * t;
  return {
    x: a * (arrive.x - 2 * leave.x + from.x) + b * (to.x - 2 * arrive.x + leave.x),
    y: a * (arrive.y - 2 * leave.y + from.y) + b * (to.y - 2 * arrive.y + leave.y),
  };
}

// Abscissas and weights of Gauss-Legendre quadrature with 8 nodes on [-1, 1], positive half
// (Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4).
const NODES = [0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363];
const WEIGHTS = [0.362683783378362, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

/** Halvings after which a curve is measured as it is, so that a cusp cannot loop for ever. */
const DEEPEST = 24;

/**
 * Arc length of a cubic between two parameters, in millimeters, to within ARC_LENGTH:
 * Gauss-Legendre with 8 nodes, halved until both halves agree with the whole. NaN where a coordinate is no number.
 */
export function cubicLength(cubic: CubicPoints, start = 0, end = 1): number {
  const { from, leave, arrive, to } = cubic;
  // Coefficients of the derivative, computed once.
  const ax = 3 * (leave.x - from.x);
  const ay = 3 * (leave.y - from.y);
  const bx = 6 * (arrive.x - 2 * leave.x + from.x);
  const by = 6 * (arrive.y - 2 * leave.y + from.y);
  const cx = 3 * (to.x - 3 * arrive.x + 3 * leave.x - from.x);
  const cy = 3 * (to.y - 3 * arrive.y + 3 * leave.y - from.y);

  const speed = (t: number): number => {
    const x = ax + t * (bx + t * cx);
    const y = ay + t * (by + t * cy);
    return Math.sqrt(x * x + y * y);
  };
  const gauss = (a: number, b: number): number => {
    const half = (b - a) / 2;
    const middle = (a + b) / 2;
    let sum = 0;
    for (let i = 0; i < NODES.length; i++) {
      const offset = half * (NODES[i] as number);
      sum += (WEIGHTS[i] as number) * (speed(middle - offset) + speed(middle + offset));
    }
    return sum * half;
  };
  const refine = (a: number, b: number, whole: number, depth: number): number => {
    const middle = (a + b) / 2;
    const left = gauss(a, middle);
    const right = gauss(middle, b);
    const isOff = Math.abs(left + right - whole) > ARC_LENGTH;
    // What is no number is never off, and would be halved to the last depth if it counted as that.
    if (!isOff || depth >= DEEPEST) return left + right;
    return refine(a, middle, left, depth + 1) + refine(middle, b, right, depth + 1);
  };
  return refine(start, end, gauss(start, end), 0);
}

/**
 * The parameter at which the curve has run `target` millimeters from its start: the inverse of
 * `cubicLength`, by Newton's method kept inside a shrinking bracket.
 */
export function cubicParameterAtLength(cubic: CubicPoints, target: number): number {
  const total = cubicLength(cubic);
  if (target <= 0) return 0;
  if (target >= total) return 1;
  let low = 0;
  let high = 1;
  let t = target / total;
  for (let i = 0; i < 60; i++) {
    const excess = cubicLength(cubic, 0, t) - target;
    if (Math.abs(excess) <= ARC_LENGTH) return t;
    if (excess > 0) high = t;
    else low = t;
    const d = cubicTangent(cubic, t);
    const next = t - excess / Math.hypot(d.x, d.y);
    t = next > low && next < high ? next : (low + high) / 2;
  }
  return t;
}

/** The part of a cubic between two parameters, as a cubic of its own (blossoming). */
export function cubicPart(cubic: CubicPoints, start: number, end: number): CubicPoints {
  return {
    from: blossom(cubic, start, start, start),
    leave: blossom(cubic, start, start, end),
    arrive: blossom(cubic, start, end, end),
    to: blossom(cubic, end, end, end),
  };
}

function blossom({ from, leave, arrive, to }: CubicPoints, u: number, v: number, w: number): Point {
  return {
    x: blossomAlong(from.x, leave.x, arrive.x, to.x, u, v, w),
    y: blossomAlong(from.y, leave.y, arrive.y, to.y, u, v, w),
  };
}

/** One coordinate of a blossom: straight mixes of mixes, each by another of three parameters. */
function blossomAlong(
  from: number,
  leave: number,
  arrive: number,
  to: number,
  u: number,
  v: number,
  w: number,
): number {
  const a = from + (leave - from) * u;
  const b = leave + (arrive - leave) * u;
  const c = arrive + (to - arrive) * u;
  const before = a + (b - a) * v;
  const after = b + (c - b) * v;
  return before + (after - before) * w;
}
