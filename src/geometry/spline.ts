/** The natural cubic spline: the line that a bent ruler takes through points. */
import type { Point } from './point';
import { add, scale, subtract } from './point';

/**
 * The handles of the natural cubic spline through two or more points, two for each span: the one
 * that leaves its start and the one that arrives at its end. `spans` are the lengths in mm by which
 * the spans count, one fewer than the points.
 *
 * With the spans given, handles are linear in the points: what moves points evenly moves the whole
 * curve so. The spline has no curvature at its ends.
 */
export function splineHandles(
  points: readonly Point[],
  spans: readonly number[],
): readonly Point[] {
  const slopes = splineSlopes(points, spans);
  return spans.flatMap((span, i) => {
    const [from, to] = [points[i], points[i + 1]] as [Point, Point];
    const [leaving, arriving] = [slopes[i], slopes[i + 1]] as [Point, Point];
    return [add(from, scale(leaving, span / 3)), subtract(to, scale(arriving, span / 3))];
  });
}

/** Derivatives at the points, by elimination in the tridiagonal system of the natural spline. */
function splineSlopes(points: readonly Point[], spans: readonly number[]): readonly Point[] {
  const last = points.length - 1;
  const chord = (i: number): Point => subtract(points[i + 1] as Point, points[i] as Point);
  const above: number[] = [];
  const right: Point[] = [];
  for (let i = 0; i <= last; i++) {
    const before = i === 0 ? 0 : 1 / (spans[i - 1] as number);
    const after = i === last ? 0 : 1 / (spans[i] as number);
    let sum: Point = { x: 0, y: 0 };
    if (i > 0) sum = add(sum, scale(chord(i - 1), 3 * before * before));
    if (i < last) sum = add(sum, scale(chord(i), 3 * after * after));
    const pivot = 2 * (before + after) - before * (above[i - 1] ?? 0);
    const done = right[i - 1];
    above.push(after / pivot);
    right.push(scale(done === undefined ? sum : subtract(sum, scale(done, before)), 1 / pivot));
  }
  for (let i = last - 1; i >= 0; i--) {
    right[i] = subtract(right[i] as Point, scale(right[i + 1] as Point, above[i] as number));
  }
  return right;
}
