/**
 * A drawing without a device: paths, words and groups, in millimeters, x to the right and y down.
 * A writer turns it into a file; it makes no decisions of its own.
 */
import type { Box } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import type { Segment } from '../geometry/segment';

/** A line as it is drawn: width in mm, `dash` as lengths in mm of ink and gap in turn. */
export interface Stroke {
  readonly color: string;
  readonly width: number;
  readonly dash?: readonly number[];
}

/**
 * Segments drawn one after another. Where one does not start at the end of the one before, the pen
 * is lifted. A closed path is one loop. `part` says what the path stands for.
 */
export interface PathShape {
  readonly kind: 'path';
  readonly part: string;
  readonly segments: readonly Segment[];
  readonly closed: boolean;
  readonly stroke?: Stroke;
  readonly fill?: string;
}

/**
 * One line of words: `at` is the anchor on the baseline, `size` the type size in mm, `rotation`
 * in degrees about `at`, positive clockwise.
 */
export interface TextShape {
  readonly kind: 'text';
  readonly words: string;
  readonly at: Point;
  readonly size: number;
  readonly weight: 'normal' | 'bold';
  readonly anchor: 'start' | 'middle' | 'end';
  readonly rotation: number;
  readonly color: string;
}

/**
 * Shapes that belong together, moved by `offset`. `layer` is a name for people, `data` for
 * programs; an `id` is used once in a scene.
 */
export interface Group {
  readonly kind: 'group';
  readonly children: readonly Shape[];
  readonly offset?: Point;
  readonly id?: string;
  readonly layer?: string;
  readonly data?: Readonly<Record<string, string>>;
}

/** What can be drawn, told apart by `kind`. */
export type Shape = PathShape | TextShape | Group;

/** A sheet of `width` x `height` mm with its top left corner at (0, 0). */
export interface Scene {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}

/** An open path of straight lines through `points`. */
export function polyline(part: string, points: readonly Point[], stroke: Stroke): PathShape {
  return { kind: 'path', part, segments: chain(points), closed: false, stroke };
}

/** A closed path of straight lines through `points`. */
export function polygon(part: string, points: readonly Point[], stroke: Stroke): PathShape {
  return { kind: 'path', part, segments: ring(points), closed: true, stroke };
}

/** A filled polygon without a border. */
export function filled(part: string, points: readonly Point[], fill: string): PathShape {
  return { kind: 'path', part, segments: ring(points), closed: true, fill };
}

/** A rectangle that is only its border; the middle of the line runs along the box. */
export function rectangle(
  part: string,
  { left, top, right, bottom }: Box,
  stroke: Stroke,
): PathShape {
  const corners = [point(left, top), point(right, top), point(right, bottom), point(left, bottom)];
  return polygon(part, corners, stroke);
}

/** A circle of four cubics, round to a few thousandths of its radius. */
export function circle(part: string, { x, y }: Point, radius: number, stroke: Stroke): PathShape {
  // The handle length that puts the middle of each quarter on the circle.
  const handle = ((Math.SQRT2 - 1) * 4 * radius) / 3;
  const quarter = (dx: number, dy: number): Segment => ({
    kind: 'cubic',
    from: point(x + radius * dx, y + radius * dy),
    leave: point(x + radius * dx - handle * dy, y + radius * dy + handle * dx),
    arrive: point(x - radius * dy + handle * dx, y + radius * dx + handle * dy),
    to: point(x - radius * dy, y + radius * dx),
  });
  const segments = [quarter(1, 0), quarter(0, 1), quarter(-1, 0), quarter(0, -1)];
  return { kind: 'path', part, segments, closed: true, stroke };
}

function chain(points: readonly Point[]): Segment[] {
  return points.slice(1).map((to, i) => ({ kind: 'line', from: points[i] ?? to, to }));
}

function ring(points: readonly Point[]): Segment[] {
  return chain([...points, ...points.slice(0, 1)]);
}
