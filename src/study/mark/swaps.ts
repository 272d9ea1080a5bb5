/** x and y are swapped together or not at all: explanations that swap one of them alone are dropped. */
import { SAME_PLACE } from '../../tolerance';
import type { AnswerKey } from './answer-key';
import type { Explanation, Run } from './explanations';
import { predicted } from './predict';
import type { Series } from './series';
import type { Slip } from './slip';

/** The runs, without swaps that the other axis of the same point speaks against. */
export function consistentSwaps(
  key: AnswerKey,
  all: readonly Series[],
  runs: readonly Run[],
  match: number,
): readonly Run[] {
  const allowed = (series: Series, swap: Slip): boolean => {
    const partner = all.find(
      (one) =>
        one.piece === series.piece &&
        one.point === series.point &&
        one.form === series.form &&
        one.axis !== series.axis,
    );
    if (partner === undefined) return isTyped(series);
    const own = runs.filter((run) => run.series === partner);
    if (own.length > 0) return own.some(({ explanations }) => explanations.some(swaps));
    const values = predicted(key, partner, [swap]);
    return partner.given.every(
      (mm, i) => mm === undefined || Math.abs(mm - (values[i] ?? NaN)) <= match,
    );
  };
  return runs.map((run) => ({
    ...run,
    explanations: run.explanations.filter(({ slips }) =>
      slips.every((slip) => slip.stage !== 'place' || allowed(run.series, slip)),
    ),
  }));
}

function swaps({ slips }: Explanation): boolean {
  return slips.some(({ stage }) => stage === 'place');
}

/** A column of zeros alone is no sign that another one was typed into it. */
function isTyped({ given }: Series): boolean {
  return given.some((mm) => Math.abs(mm ?? 0) > SAME_PLACE);
}
