import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distanceToCubic } from '../../src/geometry/nearest';
import { parallelCubic } from '../../src/geometry/parallel';
import { casteljau, cubic } from './curves';
import { runs } from '../samples';

/** The usual cubic for a circular arc about (0, 0), exact to a few millionths for 20 degrees. */
function arc(radius: number, degrees: number): ReturnType<typeof cubic> {
  const angle = (degrees * Math.PI) / 180;
  const reach = (4 / 3) * Math.tan(angle / 4) * radius;
  const [x, y] = [radius * Math.cos(angle), radius * Math.sin(angle)];
  const [dx, dy] = [reach * Math.sin(angle), reach * Math.cos(angle)];
  return cubic(radius, 0, radius, reach, x + dx, y - dy, x, y);
}

describe('the parallel of a curve', () => {
  // Clockwise about its center, the center lies to the right of travel.
  it.each([60, -60])('of an arc is an arc of a radius %s mm shorter', (depth) => {
    const parallel = parallelCubic(arc(300, 20), depth);
    for (let i = 0; i <= 20; i++) {
      const { x, y } = casteljau(parallel, i / 20);
      expect(Math.abs(Math.hypot(x, y) - (300 - depth))).toBeLessThan(1e-3);
    }
  });

  it('of a straight curve is straight', () => {
    const { from, leave, arrive, to } = parallelCubic(cubic(0, 0, 30, 0, 60, 0, 90, 0), 25);
    for (const p of [from, leave, arrive, to]) expect(p.y).toBe(25);
    expect([from.x, leave.x, arrive.x, to.x]).toEqual([0, 30, 60, 90]);
  });
});

describe('the distance from a curve', () => {
  it('is that of the nearest of many points along a gentle curve', () => {
    const mm = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
    fc.assert(
      fc.property(mm(20), mm(20), mm(40), mm(150), mm(100), (a, b, c, x, y) => {
        const curve = cubic(0, 0, 30, a, 60, b, 90, c);
        const found = distanceToCubic(curve, { x, y });
        const places = Array.from({ length: 2001 }, (_, i) => casteljau(curve, i / 2000));
        const nearest = Math.min(...places.map((p) => Math.hypot(p.x - x, p.y - y)));
        // The nearest of the points is farther than the curve itself by less than half a chord.
        expect(found).toBeLessThan(nearest + 1e-9);
        expect(found).toBeGreaterThan(nearest - 0.05);
      }),
      { numRuns: runs(40) },
    );
  });

  it('is exact beside a gentle curve and beyond its end', () => {
    const curve = arc(300, 20);
    expect(distanceToCubic(curve, { x: 250 * Math.cos(0.2), y: 250 * Math.sin(0.2) })).toBeCloseTo(
      50,
      3,
    );
    expect(distanceToCubic(curve, { x: 303, y: -4 })).toBeCloseTo(5, 9);
  });
});
