import fc from 'fast-check';
import type { Point } from '../../src/geometry/point';
import type { Cubic } from '../../src/geometry/segment';

export function cubic(...coordinates: readonly number[]): Cubic {
  const at = (i: number): Point => ({
    x: coordinates[2 * i] ?? NaN,
    y: coordinates[2 * i + 1] ?? NaN,
  });
  return { kind: 'cubic', from: at(0), leave: at(1), arrive: at(2), to: at(3) };
}

/** A point of a cubic by repeated halving of ratios (de Casteljau), not by its polynomial. */
export function casteljau({ from, leave, arrive, to }: Cubic, t: number): Point {
  let points: readonly Point[] = [from, leave, arrive, to];
  while (points.length > 1)
    points = points.slice(1).map((b, i) => {
      const a = points[i] ?? b;
      return { x: (1 - t) * a.x + t * b.x, y: (1 - t) * a.y + t * b.y };
    });
  return points[0] ?? { x: NaN, y: NaN };
}

/** The length of a polyline with `count` chords, always a little shorter than the curve. */
export function chordLength(curve: Cubic, count: number, start = 0, end = 1): number {
  let sum = 0;
  let last = casteljau(curve, start);
  for (let i = 1; i <= count; i++) {
    const next = casteljau(curve, start + ((end - start) * i) / count);
    sum += Math.hypot(next.x - last.x, next.y - last.y);
    last = next;
  }
  return sum;
}

/** In thousandths of a millimeter: two that are not the same are apart. */
const coordinate = fc.integer({ min: -500_000, max: 500_000 }).map((count) => count / 1000);

export const anyCubic = fc
  .array(coordinate, { minLength: 8, maxLength: 8 })
  .map((coordinates) => cubic(...coordinates));

/** A curve that never stops: x always grows, so that its speed has no kink. */
export const forwardCubic = fc
  .array(fc.tuple(fc.integer({ min: 20, max: 200 }), coordinate), { minLength: 4, maxLength: 4 })
  .map((steps) => {
    let x = 0;
    return cubic(...steps.flatMap(([step, y]) => [(x += step), y]));
  });

/** A side seam from the waist down to the hip: y only grows, x never turns back. */
export const sideCurve = fc
  .tuple(
    fc.double({ min: 1, max: 80, noNaN: true }),
    fc.double({ min: 100, max: 300, noNaN: true }),
    fc.double({ min: 150, max: 300, noNaN: true }),
  )
  .map(([takeUp, depth, x]) =>
    cubic(x, 0, x + (2 / 3) * takeUp, depth / 3, x + takeUp, (2 / 3) * depth, x + takeUp, depth),
  );
