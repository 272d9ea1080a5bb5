/** Parts of a sheet before they have their place: shapes with the room they take. */
import type { Box } from '../geometry/bounds';
import { joinBoxes } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { point, scale } from '../geometry/point';
import type { Group, Shape, TextShape } from './scene';
import { shapeBox } from './shape-box';
import { CAP_MIDDLE, LEADING, text } from './type';

/** Shapes, and the box that surely holds them, both in the sketch's own coordinates. */
export interface Sketch {
  readonly shapes: readonly Shape[];
  readonly box: Box;
}

/** One line of a block of words. */
export interface TextLine {
  readonly words: string;
  /** Type size in mm. */
  readonly size: number;
  readonly weight?: TextShape['weight'];
}

/** Lines below each other, each centered, or one line turned by `rotation` degrees about (0, 0). */
export function block(lines: readonly TextLine[], rotation = 0): Sketch {
  const down = downOf(rotation);
  let y = 0;
  const shapes = lines.map(({ words, size, weight = 'normal' }, i) => {
    y += i === 0 ? CAP_MIDDLE * size : LEADING * size;
    return text(words, scale(down, y), size, { weight, anchor: 'middle', rotation });
  });
  return sketchOf(shapes);
}

/**
 * Shapes as a sketch, with the box that holds them: lines with their widths, words as estimated.
 */
export function sketchOf(shapes: readonly Shape[]): Sketch {
  return { shapes, box: joinBoxes(shapes.map(shapeBox)) };
}

/** Type sizes that are tried where room is short, as shares of the full size. */
const SMALLER = [1, 0.8, 0.6, 0.45];

/** The same block in full size and in smaller ones, the largest first. */
export function* blocks(lines: readonly TextLine[], rotation = 0): Generator<Sketch> {
  for (const share of SMALLER) {
    const smaller = lines.map((line) => ({ ...line, size: share * line.size }));
    yield block(smaller, rotation);
  }
}

/** Degrees by which words along a direction are turned so that they read from left or below. */
export function readingAngle({ x, y }: Point): number {
  const angle = (Math.atan2(y, x) * 180) / Math.PI;
  if (angle >= 90) return angle - 180;
  return angle < -90 ? angle + 180 : angle;
}

/** The direction, of length 1, from the top of words turned by `angle` degrees to their foot. */
export function downOf(angle: number): Point {
  const turn = (angle * Math.PI) / 180;
  return { x: -Math.sin(turn), y: Math.cos(turn) };
}

/** The sketch with its top left corner at `corner`. */
export function placedAt({ shapes, box }: Sketch, corner: Point): Group {
  const offset = point(corner.x - box.left, corner.y - box.top);
  return { kind: 'group', offset, children: shapes };
}

/** The same as a sketch, to be joined with others. */
export function moved(sketch: Sketch, corner: Point): Sketch {
  return sketchOf([placedAt(sketch, corner)]);
}

/** mm between a nest and words beside it. */
const BESIDE = 5;

/** The sketch to the left of a box, its middle at the height `y`. */
export function leftOf(box: Box, sketch: Sketch, y: number): Sketch {
  return moved(sketch, point(box.left - BESIDE - widthOf(sketch), y - heightOf(sketch) / 2));
}

/** mm across. */
export function widthOf({ box }: Pick<Sketch, 'box'>): number {
  return box.right - box.left;
}

/** mm from top to bottom. */
export function heightOf({ box }: Pick<Sketch, 'box'>): number {
  return box.bottom - box.top;
}
