/** x and y exchanged: dx stands in the column of dy. */
import type { Point } from '../../geometry/point';
import { addedUp, asSteps } from '../../rule-sheet/moves-and-steps';
import { along } from './sheet-moves';
import type { SlipFamily } from './suspected-slip';
import { gradedSizes } from './suspected-slip';

const exchanged = ({ x, y }: Point): Point => ({ x: y, y: x });

/** In all sizes, or in the row of one, which holds its move or its step. */
export const axesSlips: SlipFamily = (subject) => {
  const { at, name, moves, base, sizes } = subject;
  if (moves === undefined) return [];
  const graded = gradedSizes(subject);
  const slip = (where: string, cost: number, right: readonly Point[]) => ({
    kind: 'axes exchanged' as const,
    at,
    id: `axes${where}`,
    words: () => `dx and dy of ${name} are probably exchanged${where}`,
    repairs: [{ at, moves: right }],
    cost,
  });
  const steps = pointSteps(moves, base);
  return [
    slip('', 0.5, moves.map(exchanged)),
    ...graded.flatMap((size) => {
      const one = (rows: readonly Point[]): readonly Point[] =>
        rows.map((row, i) => (i === size ? exchanged(row) : row));
      const words = ` in size ${sizes[size] ?? ''}`;
      const cost = 0.5 + Math.log(graded.length) + 0.7;
      return [slip(words, cost, one(moves)), slip(words, cost, addedPoints(one(steps), base))];
    }),
  ];
};

/** Steps of both axes. */
export function pointSteps(moves: readonly Point[], base: number): readonly Point[] {
  const [x, y] = [asSteps(along(moves, 'x'), base), asSteps(along(moves, 'y'), base)];
  return x.map((dx, i) => ({ x: dx, y: y[i] ?? NaN }));
}

/** Steps of both axes added up from the base. */
export function addedPoints(steps: readonly Point[], base: number): readonly Point[] {
  const [x, y] = [addedUp(along(steps, 'x'), base), addedUp(along(steps, 'y'), base)];
  return x.map((dx, i) => ({ x: dx, y: y[i] ?? NaN }));
}
