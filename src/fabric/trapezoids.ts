/** Shapes in parts that are straight along the cloth, for adding up how wide they are. */
import type { Point } from '../geometry/point';
import type { Polygon } from './flat-outline';

/** A part of a shape between two places along the cloth: its width there in mm, straight between. */
export interface Trapezoid {
  readonly length: number;
  readonly from: number;
  readonly to: number;
}

/** A shape, y along the cloth, cut across at every corner; what is hollow does not count. */
export function trapezoidsOf(corners: Polygon): readonly Trapezoid[] {
  const levels = [...new Set(corners.map(({ y }) => y))].sort((a, b) => a - b);
  return levels.slice(1).flatMap((end, i) => {
    const start = levels[i] ?? end;
    const middle = (start + end) / 2;
    const sides = sidesAt(corners, middle);
    const widthAt = (y: number): number =>
      sides.reduce((sum, side, k) => sum + (k % 2 === 0 ? -1 : 1) * crossing(side, y), 0);
    return [{ length: end - start, from: widthAt(start), to: widthAt(end) }];
  });
}

type Side = readonly [from: Point, to: Point];

/** The sides that a level crosses, from left to right. */
function sidesAt(corners: Polygon, y: number): readonly Side[] {
  return corners
    .map((to, i): Side => [corners.at(i - 1) ?? to, to])
    .filter(([from, to]) => from.y < y !== to.y < y)
    .sort((a, b) => crossing(a, y) - crossing(b, y));
}

function crossing([from, to]: Side, y: number): number {
  return from.x + ((to.x - from.x) * (y - from.y)) / (to.y - from.y);
}
