import { expect, it } from 'vitest';
import { loopArea, loopLength } from '../../src/geometry/loop';
import { point } from '../../src/geometry/point';
import type { Segment } from '../../src/geometry/segment';
import { segmentAt } from '../../src/geometry/segment';

/** A quarter of a leaf: down a curve and back along two lines, away from the zero. */
const LOOP: readonly Segment[] = [
  { kind: 'line', from: point(100, 40), to: point(160, 40) },
  {
    kind: 'cubic',
    from: point(160, 40),
    leave: point(190, 70),
    arrive: point(120, 90),
    to: point(100, 130),
  },
  { kind: 'line', from: point(100, 130), to: point(100, 40) },
];

it('encloses what a polygon of many chords does, positive for clockwise', () => {
  // The shoelace formula over ten thousand chords is off by less than a ten thousandth here.
  const corners = LOOP.flatMap((own) =>
    Array.from({ length: own.kind === 'line' ? 1 : 10_000 }, (_, i) => segmentAt(own, i / 10_000)),
  );
  const shoelace = corners.reduce((sum, { x, y }, i) => {
    const next = corners[(i + 1) % corners.length] ?? point(NaN, NaN);
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);
  expect(loopArea(LOOP)).toBeCloseTo(shoelace, 3);
  expect(loopArea(LOOP)).toBeGreaterThan(0);
  expect(loopArea(LOOP.slice(0, 1))).toBe((100 * 40 - 160 * 40) / 2);
});

it('is as long as its parts', () => {
  const square = [point(0, 0), point(30, 0), point(30, 30), point(0, 30)];
  const sides = square.map((from, i): Segment => ({
    kind: 'line',
    from,
    to: square[(i + 1) % 4] ?? from,
  }));
  expect(loopLength(sides)).toBe(120);
  expect(loopArea(sides)).toBe(900);
});
