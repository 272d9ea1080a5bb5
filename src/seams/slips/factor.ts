/** A number too large or too small by a factor: a decimal point set wrong, a step taken twice. */
import { addedUp, asSteps } from '../../rule-sheet/moves-and-steps';
import { LEAST_TYPED } from '../../tolerance';
import { changedAlong, inSize } from './sheet-moves';
import type { SuspectedSlip, SlipFamily } from './suspected-slip';
import { axisWords, gradedSizes, movedAxes } from './suspected-slip';

/** What was done to the right number, and how unlikely that is. */
interface Factor {
  readonly by: number;
  readonly words: string;
  readonly cost: number;
}

/** A decimal point one place too far left. No tolerance: one of the factors. */
const TENTH = 1 / 10;

const FACTORS: readonly Factor[] = [
  { by: 10, words: 'ten times', cost: 0 },
  { by: TENTH, words: 'a tenth of', cost: 0.7 },
  { by: 2, words: 'twice', cost: 0.3 },
  { by: 1 / 2, words: 'half of', cost: 1.5 },
];

/**
 * In all sizes, in one step, or in the move of one size; a number so small that nobody would have
 * typed it is not what was meant. A whole rule is seldom halved or doubled.
 */
export const factorSlips: SlipFamily = (subject) => {
  const { at, name, moves, base, sizes } = subject;
  if (moves === undefined) return [];
  const graded = gradedSizes(subject);
  return movedAxes(moves).flatMap((axes) =>
    FACTORS.flatMap(({ by, words, cost }) => {
      const right = (value: number): number => value / by;
      const plural = axes.length - 1;
      const slip = (
        where: string,
        more: number,
        change: Parameters<typeof changedAlong>[2],
      ): SuspectedSlip => ({
        kind: 'factor',
        at,
        id: `${words} ${axes.join('')} ${where}`,
        words: () =>
          `${where === '' ? '' : `${where} `}${axisWords(axes)} of ${name} ` +
          `${plural ? 'are' : 'is'} probably ${words} what ${plural ? 'they' : 'it'} should be`,
        repairs: [{ at, moves: changedAlong(moves, axes, change) }],
        cost: 0.5 + cost + more + plural,
      });
      const isDecimal = by === 10 || by === TENTH;
      const typed = ({ repairs: [repair] }: SuspectedSlip): boolean =>
        axes.some((axis) =>
          repair?.moves.some(
            (move, size) =>
              move[axis] !== moves[size]?.[axis] && Math.abs(move[axis]) > LEAST_TYPED,
          ),
        );
      return [
        slip('', isDecimal ? 0 : 2, (values) => values.map(right)),
        ...graded.flatMap((size) => {
          const label = sizes[size] ?? '';
          return [
            slip(`in the step to ${label}`, Math.log(graded.length), (values) =>
              addedUp(inSize(size, right)(asSteps(values, base)), base),
            ),
            slip(
              `in size ${label}`,
              Math.log(graded.length) + (isDecimal ? 0 : 1.5),
              inSize(size, right),
            ),
          ];
        }),
      ].filter(typed);
    }),
  );
};
