/** Bends of lines whose angles and depths are those of right triangles and circles. */
import { describe, expect, it } from 'vitest';
import { bendsOf } from '../../src/geometry/bends';
import type { Segment } from '../../src/geometry/segment';
import { cubic } from './curves';

/** Straight segments through points given as x, y, x, y, ... */
function lines(...numbers: readonly number[]): readonly Segment[] {
  const points = numbers.flatMap((x, i) => (i % 2 === 0 ? [{ x, y: numbers[i + 1] ?? NaN }] : []));
  return points.slice(1).map((to, i) => ({ kind: 'line', from: points[i] ?? to, to }));
}

const degrees = (slope: number): number => (Math.atan(slope) * 180) / Math.PI;

describe('the bends of a line', () => {
  it('are none where it is straight', () => {
    const { corners, turnBack, wave } = bendsOf(lines(0, 0, 10, 5, 30, 15));
    expect(corners).toEqual([0]);
    expect(turnBack).toBeCloseTo(0, 12);
    expect(wave).toBeCloseTo(0, 12);
  });

  it.each([1, -1])('are its corners where it turns one way (%d)', (way) => {
    const { corners, turnBack, wave } = bendsOf(lines(0, 0, 10, 0, 20, 3 * way, 30, 9 * way));
    expect(corners[0]).toBeCloseTo(degrees(0.3), 9);
    expect(corners[1]).toBeCloseTo(degrees(0.6) - degrees(0.3), 9);
    expect(turnBack).toBeCloseTo(0, 12);
    expect(wave).toBeCloseTo(0, 12);
  });

  it.each([1, -1])('are a dip as deep as it lies below its string (%d)', (way) => {
    // It bulges up to (10, 4) and (40, 4), where the string lies level, and sinks to (25, 1) between.
    const { turnBack, wave } = bendsOf(
      lines(0, 0, 10, -4 * way, 25, -1 * way, 40, -4 * way, 50, 0),
    );
    expect(turnBack).toBeCloseTo(2 * degrees(0.2), 9);
    expect(wave).toBeCloseTo(3, 9);
  });

  it('are those of an S without corners, from its steepest place to its end', () => {
    // y = 3x(1 - x)(1 - 2x) scaled: as a cubic with handles at thirds its slope runs 3k, -1.5k, 3k.
    const k = 0.02;
    const s = cubic(0, 0, 100, 300 * k, 200, -300 * k, 300, 0);
    const { turnBack } = bendsOf([s]);
    expect(turnBack).toBeCloseTo(degrees(3 * k) + degrees(1.5 * k), 9);
  });
});
