/** One number simply wrong, in the step to one size or in the move of one size. */
import type { Axis } from '../../rule-sheet/rule-sheet';
import { addedUp, asSteps, growthOf } from '../../rule-sheet/moves-and-steps';
import { SEAM_MATCH } from '../../tolerance';
import type { LengthDisplay } from '../../units';
import { showLength } from '../../units';
import { regularGrowth } from '../evidence/regularity';
import { along, changedAlong, inSize } from './sheet-moves';
import type { SuspectedSlip, SlipFamily, Subject } from './suspected-slip';
import { gradedSizes } from './suspected-slip';

/** Nats for a right number that nobody wrote: it is made up to fit. */
const MADE_UP = 2.5;

/** The right number is what the other steps of the point, or the seams, would have there. */
export const oneSizeSlips: SlipFamily = (subject) => {
  const { moves, base } = subject;
  if (moves === undefined) return [];
  return (['x', 'y'] as const).flatMap((axis) => {
    const own = along(moves, axis);
    return gradedSizes(subject).flatMap((size) => {
      const now = own[size] ?? NaN;
      const carried = (value: number) => (values: readonly number[]) =>
        addedUp(inSize(size, (step) => step + value - now)(asSteps(values, base)), base);
      return likelyValues(subject, axis, own, size).flatMap((value) =>
        Math.abs(value - now) <= SEAM_MATCH
          ? []
          : [
              slip(
                subject,
                axis,
                size,
                now - value,
                inSize(size, () => value),
              ),
              slip(subject, axis, size, now - value, carried(value)),
            ],
      );
    });
  });
};

function likelyValues(
  { base, shapes, closing }: Subject,
  axis: Axis,
  own: readonly number[],
  size: number,
): readonly number[] {
  const inner = size + Math.sign(base - size);
  // Growth k leads from size k to size k + 1; the one beyond this size may be spoiled as well.
  const growth = growthOf(own);
  const toSize = size > base ? size - 1 : size;
  const beyond = size > base ? size : size - 1;
  const outward = Math.sign(size - base);
  const regular = [[toSize], [toSize, beyond]].flatMap((spoiled) => {
    const step = regularGrowth(growth, toSize, spoiled, shapes);
    return step === undefined ? [] : [(own[inner] ?? NaN) + outward * step];
  });
  const closed = closing(axis, size);
  return [...regular, ...(closed === undefined ? [] : [closed])];
}

function slip(
  { at, name, sizes, moves = [] }: Subject,
  axis: Axis,
  size: number,
  off: number,
  change: Parameters<typeof changedAlong>[2],
): SuspectedSlip {
  return {
    kind: 'one size off',
    at,
    id: `off ${axis} ${size}`,
    words: (display: LengthDisplay) =>
      `d${axis} of ${name} is probably off by ${showLength(off, display)} in size ${sizes[size] ?? ''}`,
    repairs: [{ at, moves: changedAlong(moves, [axis], change) }],
    cost: MADE_UP + Math.log(sizes.length - 1),
  };
}
