/** Steps and moves changed over on the way, and a base that has numbers of its own. */
import { addedUp, asSteps } from '../../rule-sheet/moves-and-steps';
import type { AnswerKey } from './answer-key';
import type { Slip } from './slip';
import { ANYTHING } from './slip';

/**
 * From each size on, away from the base, steps in the place of moves, and the reverse; not from the
 * first size beside the base, whose step is its move.
 */
export function formSlips({ sizes, base }: AnswerKey): readonly Slip[] {
  return sizes.flatMap((label, from) => (Math.abs(from - base) < 2 ? [] : changed(label, from)));
}

function changed(label: string, from: number): readonly Slip[] {
  const isBeyond = (size: number, base: number): boolean =>
    from > base ? size >= from : size <= from;
  const advice =
    'keep one way of counting through the whole row: from the base, or from the neighbor';
  const slip = (id: string, words: string, distort: Slip['distort']): Slip => ({
    ...{ id: `${id} ${label}`, kind: 'form-from', stage: 'rounding', words, advice, distort },
    alone: true,
  });
  return [
    slip(
      'steps from',
      `moves changed over to steps: from ${label} on each number is only the step from the neighbor`,
      (moves, { key: { base } }) => {
        const steps = asSteps(moves, base);
        return moves.map((move, i) => (isBeyond(i, base) ? (steps[i] ?? NaN) : move));
      },
    ),
    slip(
      'moves from',
      `steps changed over to moves: from ${label} on each number is the whole move from the base`,
      (moves, { key: { base } }) =>
        addedUp(
          asSteps(moves, base).map((step, i) => (isBeyond(i, base) ? (moves[i] ?? NaN) : step)),
          base,
        ),
    ),
  ];
}

/** A number in the column of the base, where nothing moves. */
export const BASE_MOVED: Slip = {
  id: 'base',
  kind: 'base',
  stage: 'rounding',
  words: 'the base size has a number, though nothing moves there',
  advice: 'the base is where all moves are counted from: its column is 0 or blank',
  alone: true,
  distort: (moves, { key: { base } }) => moves.map((move, i) => (i === base ? ANYTHING : move)),
};
