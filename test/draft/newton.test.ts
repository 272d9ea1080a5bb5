import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findRoot } from '../../src/draft/newton';

const TINY = 1e-9;

describe('findRoot', () => {
  it('solves linear equations at once', () => {
    // 2a + b = 5 and a - 3b = -8 meet at a = 1, b = 3.
    const { at, left } = findRoot(([a = 0, b = 0]) => [2 * a + b - 5, a - 3 * b + 8], 2, TINY);
    expect(at[0]).toBeCloseTo(1, 8);
    expect(at[1]).toBeCloseTo(3, 8);
    expect(left).toBeLessThanOrEqual(TINY);
  });

  it('finds where a hyperbola meets a line, and how far a mast leans', () => {
    // (a + 1)(b + 2) = 6 and b = a: a^2 + 3a - 4 = 0, so a = 1.
    const crossing = findRoot(([a = 0, b = 0]) => [(a + 1) * (b + 2) - 6, b - a], 2, TINY);
    expect(crossing.at[0]).toBeCloseTo(1, 7);
    // A mast 130 long whose foot is 50 away: 120 high, 120 - 100 above the start.
    const mast = findRoot(([a = 0]) => [Math.hypot(50, 100 + a) - 130], 1, TINY);
    expect(mast.at[0]).toBeCloseTo(20, 7);
  });

  it('finds square roots of all sizes', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e6, noNaN: true }), (square) => {
        const { at } = findRoot(([a = 0]) => [(a + 1) ** 2 - square], 1, TINY);
        expect(Math.abs((at[0] ?? NaN) + 1 - Math.sqrt(square))).toBeLessThan(1e-6);
      }),
    );
  });

  it('stays where it starts if that is a root, or if there is nothing to find', () => {
    expect(findRoot(([a = 0]) => [a * 5], 1, TINY)).toEqual({ at: [0], left: 0 });
    expect(findRoot(() => [], 0, TINY)).toEqual({ at: [], left: 0 });
  });

  it('tells how far it is off where there is no root', () => {
    const { left } = findRoot(([a = 0]) => [(a - 3) ** 2 + 1], 1, TINY);
    expect(left).toBeGreaterThanOrEqual(1);
    expect(left).toBeLessThan(10);
    expect(findRoot(() => [2], 1, TINY).left).toBe(2);
  });
});
