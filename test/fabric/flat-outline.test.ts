import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Segment } from '../../src/geometry/segment';
import { segmentAt } from '../../src/geometry/segment';
import { flatOutline, polygonArea, unfolded } from '../../src/fabric/flat-outline';
import { LAY_FLATNESS } from '../../src/tolerance';
import { runs } from '../samples';

interface Place {
  readonly x: number;
  readonly y: number;
}

const anyPlace = fc.record({
  x: fc.integer({ min: 0, max: 800 }),
  y: fc.integer({ min: 0, max: 800 }),
});

/** Closed outlines of curves, each drawn as several short ones as well. */
const anyOutline: fc.Arbitrary<readonly Segment[]> = fc
  .array(fc.tuple(anyPlace, anyPlace, anyPlace), { minLength: 2, maxLength: 5 })
  .map((points) =>
    points.map(([from, leave, arrive], i) => ({
      kind: 'cubic',
      from,
      leave,
      arrive,
      to: points[(i + 1) % points.length]?.[0] ?? from,
    })),
  );

function gap({ x, y }: Place, a: Place, b: Place): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : ((x - a.x) * dx + (y - a.y) * dy) / square;
  const nearest = Math.min(1, Math.max(0, t));
  return Math.hypot(x - a.x - nearest * dx, y - a.y - nearest * dy);
}

/** A curve that runs beyond the end of its own chord before it comes back to it. */
const SWINGING: readonly Segment[] = [
  { kind: 'line', from: { x: 250, y: 343 }, to: { x: 0, y: 0 } },
  {
    kind: 'cubic',
    from: { x: 0, y: 0 },
    leave: { x: 244, y: 0 },
    arrive: { x: 268, y: 524 },
    to: { x: 250, y: 343 },
  },
];

it('a cut line stays within the tolerance of its polygon', () => {
  fc.assert(
    fc.property(anyOutline, (outline) => {
      const corners = flatOutline(outline);
      for (const segment of outline) {
        for (let k = 0; k <= 200; k++) {
          const place = segmentAt(segment, k / 200);
          const gaps = corners.map((a, i) => gap(place, a, corners.at(i - 1) ?? a));
          expect(Math.min(...gaps)).toBeLessThanOrEqual(LAY_FLATNESS + 1e-9);
        }
      }
    }),
    { numRuns: runs(8), examples: [[SWINGING]] },
  );
});

it('half a piece unfolds to twice its area, symmetric about the fold', () => {
  const half = [
    { x: 5, y: 0 },
    { x: 40, y: -3 },
    { x: 60, y: 50 },
    { x: 5, y: 70 },
  ];
  const fold = { from: { x: 5, y: 70 }, to: { x: 5, y: 0 } };
  for (let start = 0; start < half.length; start++) {
    const whole = unfolded([...half.slice(start), ...half.slice(0, start)], fold);
    expect(polygonArea(whole)).toBeCloseTo(2 * polygonArea(half), 9);
    expect(whole.length).toBe(6);
    expect(Math.min(...whole.map(({ x }) => x))).toBeCloseTo(-50, 9);
  }
});
