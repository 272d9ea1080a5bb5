import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossingsAtLevel } from '../../src/geometry/level';
import type { Line } from '../../src/geometry/segment';
import { casteljau, cubic, sideCurve } from './curves';

function line(x1: number, y1: number, x2: number, y2: number): Line {
  return { kind: 'line', from: { x: x1, y: y1 }, to: { x: x2, y: y2 } };
}

describe('where lines cross a level', () => {
  it.each([
    ['through it', line(0, 0, 10, 10), 4, [4]],
    ['upward', line(10, 10, 0, 0), 4, [4]],
    ['above it', line(0, 0, 10, 3), 4, []],
    ['below it', line(0, 5, 10, 9), 4, []],
    ['along it', line(2, 4, 9, 4), 4, [2, 9]],
    ['ending on it', line(0, 0, 10, 4), 4, [10]],
    ['starting on it', line(7, 4, 10, 9), 4, [7]],
    ['upright', line(3, 0, 3, 10), 4, [3]],
  ])('%s', (_, segment, y, xs) => {
    expect(crossingsAtLevel([segment], y)).toEqual(xs);
  });

  it('gives a corner once for each segment that meets there', () => {
    expect(crossingsAtLevel([line(0, 0, 5, 4), line(5, 4, 0, 8)], 4)).toEqual([5, 5]);
  });
});

describe('where curves cross a level', () => {
  it('once for a side seam, where the parabola says', () => {
    fc.assert(
      fc.property(sideCurve, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (curve, part) => {
        // The curve is x = hip - takeUp (1 - y/depth)^2 by its construction.
        const depth = curve.to.y;
        const takeUp = curve.to.x - curve.from.x;
        const [x, ...others] = crossingsAtLevel([curve], part * depth);
        expect(others).toEqual([]);
        expect(Math.abs((x ?? NaN) - (curve.to.x - takeUp * (1 - part) ** 2))).toBeLessThan(1e-6);
      }),
    );
  });

  it('at its ends', () => {
    const curve = cubic(1, 0, 5, 3, 5, 6, 5, 9);
    expect(crossingsAtLevel([curve], 0)).toEqual([1]);
    expect(crossingsAtLevel([curve], 9)).toEqual([5]);
    expect(crossingsAtLevel([curve], 9.1)).toEqual([]);
  });

  it('three times for an S, in the order of travel', () => {
    // y = 30 t (1-t) (1-2t), zero at both ends and in the middle; x = t.
    const curve = cubic(0, 0, 1 / 3, 10, 2 / 3, -10, 1, 0);
    const xs = crossingsAtLevel([curve], 0).toSorted((a, b) => a - b);
    expect(xs).toHaveLength(3);
    expect(xs[1]).toBeCloseTo(0.5, 9);
  });

  it('everywhere that a fine polyline does', () => {
    const whole = fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 8, maxLength: 8 });
    fc.assert(
      fc.property(whole, fc.integer({ min: -400, max: 400 }), (coordinates, floor) => {
        const curve = cubic(...coordinates);
        const y = floor + 0.37;
        const points = Array.from({ length: 2049 }, (_, i) => casteljau(curve, i / 2048));
        const crossed = points.flatMap(({ y: here }, i) =>
          i > 0 && (here - y) * ((points[i - 1]?.y ?? y) - y) < 0 ? [i] : [],
        );
        const found = crossingsAtLevel([curve], y);
        const closest = Math.min(...crossed.slice(1).map((i, k) => i - (crossed[k] ?? 0)));
        // Two crossings within a 32nd of the curve may be passed over as a pair; skirts have none.
        if (closest > 2048 / 16) expect(found).toHaveLength(crossed.length);
        expect(Math.abs(found.length - crossed.length)).toBeOneOf([0, 2]);
        for (const x of found) {
          const gaps = points.map((point) => Math.hypot(point.x - x, point.y - y));
          expect(Math.min(...gaps)).toBeLessThan(2);
        }
      }),
    );
  });
});
