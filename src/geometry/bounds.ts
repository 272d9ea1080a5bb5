/** Bounding boxes: the smallest upright rectangle around points or segments, in millimeters. */
import { cubicAt } from './cubic';
import type { Point } from './point';
import type { Segment } from './segment';
import { controlPoints } from './segment';

/** `left <= right` along x and `top <= bottom` along y, which runs down. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The box around nothing: joined to another box it leaves that one as it is. */
export const EMPTY_BOX: Box = {
  left: Infinity,
  top: Infinity,
  right: -Infinity,
  bottom: -Infinity,
};

/** The box around points; around none it is `EMPTY_BOX`. */
export function pointBounds(points: readonly Point[]): Box {
  let { left, top, right, bottom } = EMPTY_BOX;
  for (const { x, y } of points) {
    if (x < left) left = x;
    if (x > right) right = x;
    if (y < top) top = y;
    if (y > bottom) bottom = y;
  }
  return { left, top, right, bottom };
}

/** The box around the curve itself: handles do not count, the extrema between the ends do. */
export function segmentBounds(segment: Segment): Box {
  if (segment.kind === 'line') return pointBounds([segment.from, segment.to]);
  const { from, leave, arrive, to } = segment;
  const turns = [
    ...turnsAlong(from.x, leave.x, arrive.x, to.x),
    ...turnsAlong(from.y, leave.y, arrive.y, to.y),
  ];
  return pointBounds([from, to, ...turns.map((t) => cubicAt(segment, t))]);
}

/** The box around the points that shape a segment, handles included; it holds the segment. */
export function controlBounds(segment: Segment): Box {
  return pointBounds(controlPoints(segment));
}

/** The box around curves and lines together; around none it is `EMPTY_BOX`. */
export function segmentsBounds(segments: readonly Segment[]): Box {
  return joinBoxes(segments.map(segmentBounds));
}

/** The smallest box around all of `boxes`. */
export function joinBoxes(boxes: readonly Box[]): Box {
  let { left, top, right, bottom } = EMPTY_BOX;
  for (const box of boxes) {
    if (box.left < left) left = box.left;
    if (box.right > right) right = box.right;
    if (box.top < top) top = box.top;
    if (box.bottom > bottom) bottom = box.bottom;
  }
  return { left, top, right, bottom };
}

/** The box with `by` millimeters added on every side. */
export function grownBox({ left, top, right, bottom }: Box, by: number): Box {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}

/** Whether two boxes have area in common; boxes that only touch do not. */
export function boxesOverlap(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** Whether two boxes have a point in common; it is enough that they touch. */
export function boxesMeet(a: Box, b: Box): boolean {
  return a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
}

/** Whether `inner` lies within `outer`; their sides may touch. */
export function boxHolds(outer: Box, inner: Box): boolean {
  return (
    inner.left >= outer.left &&
    inner.right <= outer.right &&
    inner.top >= outer.top &&
    inner.bottom <= outer.bottom
  );
}

/** Parameters strictly between 0 and 1 at which one coordinate of a cubic turns round. */
export function turnsAlong(from: number, leave: number, arrive: number, to: number): number[] {
  // The derivative, divided by 3, as a t^2 + b t + c.
  const a = to - 3 * arrive + 3 * leave - from;
  const b = 2 * (arrive - 2 * leave + from);
  const c = leave - from;
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return [];
  // Adding numbers of one sign keeps every digit; the other root comes from the product c / a.
  const sum = -(b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant)) / 2;
  return [sum / a, c / sum].filter((t) => t > 0 && t < 1);
}
