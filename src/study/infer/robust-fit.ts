/** Least squares that leave out the few cells that contradict all others. */
import { TIED_CELLS } from '../../tolerance';
import type { Fit } from './least-squares';
import { leastSquares } from './least-squares';

/** The fit of the cells that agree, and the cells that were left out of it. */
export interface RobustFit extends Fit {
  /** Places of cells that contradict the others; what `residuals` has of them is by how much. */
  readonly out: readonly number[];
  /**
   * Places of cells that contradict one another, where the others do not tell which is wrong: all of
   * them are left out, and residuals of them that cannot be told are NaN.
   */
  readonly doubtful: readonly number[];
  /** False where no few cells are to blame: then nothing is left out, and the fit is a mean of all. */
  readonly settled: boolean;
}

/** Of cells that contradict one another the one to blame misses this many times more than the next. */
const CLEARLY = 3;

/**
 * Leaves out the cell whose absence lets the others agree best, one after another, until none misses
 * by more than it may; `rows` and `wanted` (mm) as for leastSquares, `off` is by how many mm each cell may miss.
 * `expected` has what the other
 * sizes lead one to expect of each unknown; it decides between cells that are equally to blame.
 */
export function robustFit(
  rows: readonly (readonly number[])[],
  wanted: readonly number[],
  off: readonly number[],
  expected?: readonly (number | undefined)[],
): RobustFit {
  const fitOf = (kept: readonly number[]): Fit =>
    leastSquares(
      kept.map((i) => rows[i] ?? []),
      kept.map((i) => wanted[i] ?? NaN),
    );
  const unknowns = rows[0]?.length ?? 0;
  // Half of the cells that are more than enough: beyond that the wrong ones would outvote the right.
  const most = Math.max(1, Math.floor((rows.length - unknowns) / 2));
  let kept: readonly number[] = rows.map((_, i) => i);
  let out: readonly number[] = [];
  let doubtful: readonly number[] = [];
  for (;;) {
    const fit = fitOf(kept);
    if (fit.residuals.every((miss, k) => Math.abs(miss) <= (off[kept[k] ?? -1] ?? NaN)))
      return {
        values: Array.from({ length: unknowns }, (_, k) => fit.values[k]),
        // A cell that was kept is met even where it does not tell its unknowns apart.
        residuals: rows.map(
          (row, i) => fit.residuals[kept.indexOf(i)] ?? given(row, fit.values) - (wanted[i] ?? NaN),
        ),
        out,
        doubtful,
        settled: true,
      };
    if (out.length + doubtful.length >= most)
      return { ...fitOf(rows.map((_, i) => i)), out: [], doubtful: [], settled: false };
    const trials = kept.map((i) => ({ i, left: norm(fitOf(kept.filter((k) => k !== i))) }));
    const least = Math.min(...trials.map(({ left }) => left));
    const tied = trials.filter(({ left }) => left <= least + TIED_CELLS).map(({ i }) => i);
    const blamed = tied.length === 1 ? tied[0] : decided(tied, rows, wanted, expected);
    const dropped = blamed === undefined ? tied : [blamed];
    if (blamed === undefined) doubtful = [...doubtful, ...tied];
    else out = [...out, blamed];
    kept = kept.filter((i) => !dropped.includes(i));
  }
}

/** The one cell that is far from what is expected while the other cells are near. */
function decided(
  tied: readonly number[],
  rows: readonly (readonly number[])[],
  wanted: readonly number[],
  expected: readonly (number | undefined)[] | undefined,
): number | undefined {
  if (expected === undefined) return undefined;
  const [first, second] = tied
    .map((i) => ({ i, miss: Math.abs(given(rows[i] ?? [], expected) - (wanted[i] ?? NaN)) }))
    .toSorted((a, b) => b.miss - a.miss);
  if (first === undefined || second === undefined) return first?.i;
  return first.miss > CLEARLY * second.miss ? first.i : undefined;
}

/** What a row gives; NaN where it needs an unknown that is not known. */
function given(row: readonly number[], values: readonly (number | undefined)[]): number {
  return row.reduce((sum, slope, k) => (slope === 0 ? sum : sum + slope * (values[k] ?? NaN)), 0);
}

function norm({ residuals }: Fit): number {
  return Math.hypot(...residuals);
}
