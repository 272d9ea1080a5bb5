import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstCrossing } from '../../src/geometry/simple-polygon';

const corners = (...xy: readonly (readonly [number, number])[]) => xy.map(([x, y]) => ({ x, y }));

describe('firstCrossing', () => {
  it.each([
    ['square', corners([0, 0], [9, 0], [9, 9], [0, 9])],
    ['dented one', corners([0, 0], [4, 0], [5, 3], [6, 0], [9, 0], [9, 9], [0, 9])],
    ['triangle', corners([0, 0], [9, 0], [0, 9])],
    ['dart of no width', corners([0, 0], [5, 0], [5, 4], [5, 0], [9, 0], [9, 9], [0, 9])],
    ['side of no length', corners([0, 0], [9, 0], [9, 0], [9, 9], [0, 9])],
    ['corner that touches a side', corners([0, 0], [9, 0], [9, 9], [5, 0], [0, 9])],
  ])('a %s does not cross itself', (_, polygon) => {
    expect(firstCrossing(polygon)).toBeUndefined();
  });

  it('names the two sides by where they start', () => {
    expect(firstCrossing(corners([0, 0], [9, 9], [9, 0], [0, 9]))).toEqual([0, 2]);
    // A dart as wide as the waist edge: its outer leg swings over the side.
    expect(
      firstCrossing(corners([0, 0], [2, 0], [6, 5], [12, 0], [9, 0], [10, 20], [0, 20])),
    ).toEqual([2, 4]);
  });

  it('finds nothing in a star-shaped polygon, and something once two corners are swapped', () => {
    const radii = fc.array(fc.double({ min: 10, max: 100, noNaN: true }), {
      minLength: 5,
      maxLength: 12,
    });
    fc.assert(
      fc.property(radii, (rs) => {
        const star = rs.map((r, i) => {
          const angle = (2 * Math.PI * i) / rs.length;
          return { x: r * Math.cos(angle), y: r * Math.sin(angle) };
        });
        expect(firstCrossing(star)).toBeUndefined();
      }),
    );
    const pentagon = Array.from({ length: 5 }, (_, i) => ({
      x: 50 * Math.cos((2 * Math.PI * i) / 5),
      y: 50 * Math.sin((2 * Math.PI * i) / 5),
    }));
    const [a, b, ...rest] = pentagon;
    expect(firstCrossing([b, a, ...rest].filter((corner) => corner !== undefined))).toBeDefined();
  });
});
