/** The rows of two sizes exchanged at one point. */
import type { Point } from '../../geometry/point';
import { addedPoints, pointSteps } from './axes';
import type { SlipFamily } from './suspected-slip';
import { gradedSizes } from './suspected-slip';

/** Moves or steps of any two sizes; neighbors are exchanged more often than others. */
export const sizeSlips: SlipFamily = (subject) => {
  const { at, name, moves, base, sizes } = subject;
  if (moves === undefined) return [];
  const graded = gradedSizes(subject);
  const steps = pointSteps(moves, base);
  return graded.flatMap((a, i) =>
    graded.slice(i + 1).flatMap((b, apart) => {
      const swap = (rows: readonly Point[]): readonly Point[] =>
        rows.map((row, k) => (k === a ? rows[b] : k === b ? rows[a] : row) ?? row);
      return [swap(moves), addedPoints(swap(steps), base)].map((right) => ({
        kind: 'sizes exchanged' as const,
        at,
        id: `sizes ${a} ${b}`,
        words: () =>
          `the rows of sizes ${sizes[a] ?? ''} and ${sizes[b] ?? ''} at ${name} are probably exchanged`,
        repairs: [{ at, moves: right }],
        cost: 0.5 + Math.log(graded.length) + (apart === 0 ? 0 : 1.5),
      }));
    }),
  );
};
