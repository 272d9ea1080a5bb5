/** What a set of slips would have written into a series. */
import type { AnswerKey } from './answer-key';
import { asSteps } from '../../rule-sheet/moves-and-steps';
import type { SeriesName } from './series';
import { keyPoint } from './series';
import type { Slip } from './slip';
import { STAGES } from './slip';

/**
 * The cells (mm, one a size) of a series after the slips, made in the order of their stages; empty
 * where one of them cannot happen there.
 */
export function predicted(
  key: AnswerKey,
  name: SeriesName,
  slips: readonly Slip[],
): readonly number[] {
  const swapped = slips.some(({ stage }) => stage === 'place');
  const axis = swapped === (name.axis === 'x') ? 'y' : 'x';
  const course = { key, point: keyPoint(key, name), axis } as const;
  let moves: readonly number[] | undefined = course.point.moves[axis];
  for (const stage of STAGES)
    for (const slip of slips)
      if (slip.stage === stage && moves !== undefined) moves = slip.distort(moves, course);
  if (moves === undefined) return [];
  const exchanged = slips.some(({ stage }) => stage === 'form');
  return exchanged === (name.form === 'step') ? moves : asSteps(moves, key.base);
}
