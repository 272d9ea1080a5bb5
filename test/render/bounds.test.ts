import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  EMPTY_BOX,
  boxHolds,
  boxesOverlap,
  grownBox,
  joinBoxes,
  segmentBounds,
} from '../../src/geometry/bounds';
import { cubicAt } from '../../src/geometry/cubic';
import { point } from '../../src/geometry/point';

describe('bounding boxes', () => {
  it('hold a bulge between the ends and leave the handles out', () => {
    const box = segmentBounds({
      kind: 'cubic',
      from: point(0, 0),
      leave: point(4, 0),
      arrive: point(4, 3),
      to: point(0, 3),
    });
    expect(box).toEqual({ left: 0, top: 0, right: 3, bottom: 3 });
  });

  it('hold every point of any cubic, and are tight', () => {
    const anyPoint = fc.record({
      x: fc.double({ min: -1000, max: 1000, noNaN: true }),
      y: fc.double({ min: -1000, max: 1000, noNaN: true }),
    });
    fc.assert(
      fc.property(anyPoint, anyPoint, anyPoint, anyPoint, (from, leave, arrive, to) => {
        const cubic = { kind: 'cubic' as const, from, leave, arrive, to };
        const box = segmentBounds(cubic);
        const points = Array.from({ length: 401 }, (_, i) => cubicAt(cubic, i / 400));
        const sampled = {
          left: Math.min(...points.map((p) => p.x)),
          top: Math.min(...points.map((p) => p.y)),
          right: Math.max(...points.map((p) => p.x)),
          bottom: Math.max(...points.map((p) => p.y)),
        };
        expect(boxHolds(grownBox(box, 1e-6), sampled)).toBe(true);
        expect(boxHolds(grownBox(sampled, 0.2), box)).toBe(true);
      }),
    );
  });

  it('join, and overlap only where they share an area', () => {
    const a = { left: 0, top: 0, right: 1, bottom: 1 };
    const b = { left: 1, top: 0, right: 2, bottom: 2 };
    expect(joinBoxes([])).toEqual(EMPTY_BOX);
    expect(joinBoxes([a, b])).toEqual({ left: 0, top: 0, right: 2, bottom: 2 });
    expect(boxesOverlap(a, b)).toBe(false);
    expect(boxesOverlap(grownBox(a, 0.1), b)).toBe(true);
  });
});
