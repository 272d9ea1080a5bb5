/** A sign turned: in all sizes, in one step, or in the move of one size. */
import { addedUp, asSteps } from '../../rule-sheet/moves-and-steps';
import { changedAlong, inSize } from './sheet-moves';
import type { SuspectedSlip, SlipFamily } from './suspected-slip';
import { axisWords, gradedSizes, movedAxes } from './suspected-slip';

const negated = (value: number): number => -value;

/** Signs of x, of y and of both; one cell is less likely than a whole column by the number of cells. */
export const signSlips: SlipFamily = (subject) => {
  const { at, name, moves, base } = subject;
  if (moves === undefined) return [];
  const sizes = gradedSizes(subject);
  return movedAxes(moves).flatMap((axes) => {
    const both = axes.length - 1;
    const slip = (
      where: string,
      cost: number,
      change: Parameters<typeof changedAlong>[2],
      size = '',
    ): SuspectedSlip => ({
      kind: 'sign',
      at,
      id: `sign ${axes.join('')}${where}${size}`,
      words: () =>
        `${both ? 'the signs' : 'the sign'} of ${axisWords(axes)} at ${name} ` +
        `${both ? 'are' : 'is'} probably wrong${where}`,
      repairs: [{ at, moves: changedAlong(moves, axes, change) }],
      cost: cost + both,
    });
    return [
      slip('', 0, (values) => values.map(negated)),
      ...sizes.flatMap((size) => [
        slip(
          ' in one step',
          Math.log(sizes.length),
          (values) => addedUp(inSize(size, negated)(asSteps(values, base)), base),
          ` ${size}`,
        ),
        slip(' in one size', Math.log(sizes.length), inSize(size, negated), ` ${size}`),
      ]),
    ];
  });
};
