/** Points and vectors in the plane, in millimeters: x from the center line out, y down the body. */

/**
 * A place, or a vector between places, in mm; x grows away from the center line, y down the body.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A straight line through two points, or from the one to the other. */
export interface StraightLine {
  readonly from: Point;
  readonly to: Point;
}

/** The value at `x` and `y`, both in mm. */
export function point(x: number, y: number): Point {
  return { x, y };
}

/** The vector sum: `a` moved by `b`. */
export function add(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y };
}

/** The vector from `b` to `a`. */
export function subtract(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

/** The vector `a` made longer by a plain number; a negative one turns it round. */
export function scale(a: Point, factor: number): Point {
  return { x: a.x * factor, y: a.y * factor };
}

/** The scalar product in square mm: zero at a right angle, negative where the directions part. */
export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** z of the cross product: positive where `b` lies clockwise from `a` on paper (y runs down). */
export function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}

/** How long a vector is, in mm. */
export function length(a: Point): number {
  return Math.sqrt(a.x * a.x + a.y * a.y);
}

/** The straight way between two points, in mm. */
export function distance(a: Point, b: Point): number {
  const x = a.x - b.x;
  const y = a.y - b.y;
  return Math.sqrt(x * x + y * y);
}

/** The point at `t` of the way from `a` (0) to `b` (1). */
export function between(a: Point, b: Point, t: number): Point {
  return { x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t };
}

/** Unit vector; the zero vector stays zero. */
export function unit(a: Point): Point {
  const l = length(a);
  return l === 0 ? a : { x: a.x / l, y: a.y / l };
}

/** A quarter turn, from +x to +y (clockwise on paper). */
export function quarterTurn(a: Point): Point {
  return { x: -a.y, y: a.x };
}

/** The image of `p` in the line through `at` along the unit vector `along`. */
export function mirroredIn(p: Point, at: Point, along: Point): Point {
  const from = subtract(p, at);
  const image = scale(along, 2 * dot(from, along));
  return { x: at.x + image.x - from.x, y: at.y + image.y - from.y };
}

/** Angle in degrees, 0 to 180, between two directions. */
export function angleBetween(a: Point, b: Point): number {
  return (Math.atan2(Math.abs(cross(a, b)), dot(a, b)) * 180) / Math.PI;
}
