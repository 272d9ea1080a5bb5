/** A slip is told only where it explains most of the cells that it would have turned. */
import { EXPLAINS_MOST, SAME_PLACE } from '../../tolerance';
import type { AnswerKey } from './answer-key';
import type { Explanation, Run } from './explanations';
import type { ExplainedSheet, FoundSlip } from './fewest-slips';
import { fewestSlips } from './fewest-slips';
import { predicted } from './predict';
import type { Series } from './series';
import { rightValues } from './series';
import type { Slip, Stage } from './slip';
import { ANYTHING } from './slip';

/** A unit and a form are of a whole sheet: who has them wrong has them wrong everywhere. */
const OF_SHEETS: ReadonlySet<Stage> = new Set(['unit', 'form']);

/** How closely cells are compared, mm: to be right, and to be what a slip makes of them. */
export interface Closeness {
  readonly tolerance: number;
  readonly match: number;
}

/**
 * The fewest slips behind the runs, each of which explains most of what it would have turned: of
 * its own series, or of the sheet for slips of a whole sheet. The other runs are left unexplained.
 */
export function mostlyExplained(
  key: AnswerKey,
  all: readonly Series[],
  runs: readonly Run[],
  catalog: readonly Slip[],
  close: Closeness,
): ExplainedSheet {
  let left = runs.map((run) => ({
    ...run,
    explanations: run.explanations.filter((one) => fitsItsSeries(key, run.series, one, close)),
  }));
  for (;;) {
    const diagnosis = fewestSlips(left, catalog);
    const chance = diagnosis.found.filter((one) => !fitsTheSheet(key, all, one, close));
    if (chance.length === 0) return { ...diagnosis, unexplained: bySeries(diagnosis.unexplained) };
    const dropped = new Set(chance.map(({ slip }) => slip.id));
    left = left.map((run) => ({
      ...run,
      explanations: run.explanations.filter(({ slips }) =>
        slips.every(({ id }) => !dropped.has(id)),
      ),
    }));
  }
}

/** One run a series: cells without a cause are told together. */
function bySeries(runs: readonly Run[]): readonly Run[] {
  return [...new Set(runs.map(({ series }) => series))].map((series) => ({
    series,
    sizes: runs
      .filter((run) => run.series === series)
      .flatMap(({ sizes }) => sizes)
      .toSorted((a, b) => a - b),
    explanations: [],
  }));
}

/** Each slip of the explanation turns cells of the series, and most of these are as it has them. */
function fitsItsSeries(
  key: AnswerKey,
  series: Series,
  { slips }: Explanation,
  { tolerance, match }: Closeness,
): boolean {
  const made = predicted(key, series, slips);
  return slips.every((slip) => {
    const without = predicted(
      key,
      series,
      slips.filter((other) => other !== slip),
    );
    const touched = series.given.flatMap((mm, i) =>
      mm !== undefined && differs(made[i], without[i], tolerance) ? [i] : [],
    );
    const explained = touched.filter((i) => !differs(series.given[i], made[i], match));
    return touched.length === 0 || explained.length > EXPLAINS_MOST * touched.length;
  });
}

function fitsTheSheet(
  key: AnswerKey,
  all: readonly Series[],
  found: FoundSlip,
  { tolerance }: Closeness,
): boolean {
  // Rows are exchanged together or not at all.
  if (!OF_SHEETS.has(found.slip.stage) && found.slip.kind !== 'rows') return true;
  const { explained, touched } = reach(key, all, found, tolerance);
  return explained > EXPLAINS_MOST * touched;
}

/** Cells of the sheet that a slip would have turned, and those of them in which it was found. */
export function reach(
  key: AnswerKey,
  all: readonly Series[],
  { slip, runs }: FoundSlip,
  tolerance: number,
): { readonly touched: number; readonly explained: number } {
  let [touched, explained] = [0, 0];
  for (const series of all) {
    const right = rightValues(key, series);
    const made = predicted(key, series, [slip]);
    const own = new Set(runs.flatMap((run) => (run.series === series ? run.sizes : [])));
    series.given.forEach((mm, i) => {
      if (mm === undefined || made.length === 0 || !differs(made[i], right[i], tolerance)) return;
      touched++;
      if (own.has(i)) explained++;
    });
  }
  return { touched, explained };
}

function differs(a: number | undefined, b: number | undefined, by: number): boolean {
  // What may be anything is no evidence against a number that stands there.
  if (a === ANYTHING || b === ANYTHING) return false;
  return !(Math.abs((a ?? NaN) - (b ?? NaN)) <= by + SAME_PLACE);
}
