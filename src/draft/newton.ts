/** Newton's method for a few equations in as many unknowns, with a numeric Jacobian. */
import { LEAST_SHARE, TRUING_PROBE } from '../tolerance';

/** Where the search ended, and how near to a root that is. */
export interface Root {
  /** The unknowns, in mm. */
  readonly at: readonly number[];
  /** Largest residual left, in the unit of the residuals. */
  readonly left: number;
}

const ROUNDS = 40;

/**
 * Finds where all residuals vanish, starting at zero. Steps are halved while they do not improve;
 * gives the best place found, whose `left` tells whether it is a root.
 */
export function findRoot(
  residuals: (at: readonly number[]) => readonly number[],
  count: number,
  enough: number,
): Root {
  let at: readonly number[] = new Array<number>(count).fill(0);
  let values = residuals(at);
  for (let round = 0; round < ROUNDS && largest(values) > enough; round++) {
    const columns = at.map((_, k) => {
      const probe = residuals(at.map((u, i) => (i === k ? u + TRUING_PROBE : u)));
      return probe.map((value, i) => (value - (values[i] as number)) / TRUING_PROBE);
    });
    const step = eliminate(
      values.map((value, row) => [...columns.map((column) => column[row] as number), -value]),
    );
    const taken = improved(residuals, at, step, values);
    if (taken === undefined) break;
    [at, values] = taken;
  }
  return { at, left: largest(values) };
}

function largest(values: readonly number[]): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}

function improved(
  residuals: (at: readonly number[]) => readonly number[],
  at: readonly number[],
  step: readonly number[],
  values: readonly number[],
): readonly [readonly number[], readonly number[]] | undefined {
  for (let share = 1; share > LEAST_SHARE; share /= 2) {
    const next = at.map((u, i) => u + share * (step[i] as number));
    const found = residuals(next);
    if (largest(found) < largest(values)) return [next, found];
  }
  return undefined;
}

/** Gaussian elimination with partial pivoting of rows `[...coefficients, right side]`. */
function eliminate(rows: readonly (readonly number[])[]): readonly number[] {
  const m = rows.map((row) => [...row]);
  const n = m.length;
  const cell = (row: number, column: number): number => m[row]?.[column] ?? NaN;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let row = k + 1; row < n; row++)
      if (Math.abs(cell(row, k)) > Math.abs(cell(pivot, k))) pivot = row;
    [m[k], m[pivot]] = [m[pivot] ?? [], m[k] ?? []];
    for (let row = k + 1; row < n; row++) {
      const factor = cell(row, k) / cell(k, k);
      m[row] = (m[row] ?? []).map((value, column) => value - factor * cell(k, column));
    }
  }
  const solution = new Array<number>(n).fill(0);
  for (let row = n - 1; row >= 0; row--) {
    let sum = cell(row, n);
    for (let k = row + 1; k < n; k++) sum -= cell(row, k) * (solution[k] as number);
    solution[row] = sum / cell(row, row);
  }
  return solution;
}
