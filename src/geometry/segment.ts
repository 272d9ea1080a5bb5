/** One stretch of an outline: a straight line or a cubic Bézier curve. */
import type { Point } from './point';
import { between, distance, subtract } from './point';
import { cubicAt, cubicLength, cubicPart, cubicTangent } from './cubic';

/** A straight stretch, traveled from `from` to `to`. */
export interface Line {
  readonly kind: 'line';
  readonly from: Point;
  readonly to: Point;
}

/** A cubic Bézier curve by its four control points, traveled from `from` to `to`. */
export interface Cubic {
  readonly kind: 'cubic';
  readonly from: Point;
  /** The handle that sets the direction at `from`. */
  readonly leave: Point;
  /** The handle that sets the direction at `to`. */
  readonly arrive: Point;
  readonly to: Point;
}

/** A stretch of an outline, told apart by `kind`. */
export type Segment = Line | Cubic;

/** The points that shape a segment in its order, handles included; it lies within their hull. */
export function controlPoints(segment: Segment): readonly Point[] {
  const { from, to } = segment;
  return segment.kind === 'line' ? [from, to] : [from, segment.leave, segment.arrive, to];
}

/** Arc length in millimeters. */
export function segmentLength(segment: Segment): number {
  return segment.kind === 'line' ? distance(segment.from, segment.to) : cubicLength(segment);
}

/** The point at parameter `t`, 0 to 1; on a cubic `t` is not a share of its length. */
export function segmentAt(segment: Segment, t: number): Point {
  return segment.kind === 'cubic' ? cubicAt(segment, t) : between(segment.from, segment.to, t);
}

/** Direction of travel at parameter `t`, not normalized. */
export function segmentTangent(segment: Segment, t: number): Point {
  return segment.kind === 'cubic' ? cubicTangent(segment, t) : subtract(segment.to, segment.from);
}

/** The part of a segment between two of its parameters. */
export function segmentPart(segment: Segment, start: number, end: number): Segment {
  if (start === 0 && end === 1) return segment;
  return segment.kind === 'cubic'
    ? { kind: 'cubic', ...cubicPart(segment, start, end) }
    : { kind: 'line', from: segmentAt(segment, start), to: segmentAt(segment, end) };
}

/** The same stretch traveled the other way. */
export function reversed(segment: Segment): Segment {
  return segment.kind === 'line'
    ? { kind: 'line', from: segment.to, to: segment.from }
    : {
        kind: 'cubic',
        from: segment.to,
        leave: segment.arrive,
        arrive: segment.leave,
        to: segment.from,
      };
}

/** The stretch with each of its points moved; a turn, a shift or a mirror keeps its shape. */
export function movedSegment(segment: Segment, move: (p: Point) => Point): Segment {
  const [from, to] = [move(segment.from), move(segment.to)];
  return segment.kind === 'line'
    ? { kind: 'line', from, to }
    : { kind: 'cubic', from, leave: move(segment.leave), arrive: move(segment.arrive), to };
}
