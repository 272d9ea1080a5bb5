/** Least squares by mathjs, and which unknowns the equations cannot tell. */
import { create, multiplyDependencies, pinvDependencies } from 'mathjs';

/** Loaded by `infer` alone: matrices are the larger part of mathjs. */
const math = create({ ...multiplyDependencies, ...pinvDependencies });

export interface Fit {
  /** One an unknown; undefined where the equations cannot tell it apart from others, or at all. */
  readonly values: readonly (number | undefined)[];
  /** One an equation: what it gives less what it should. */
  readonly residuals: readonly number[];
}

/** An unknown is known if the equations leave it no freedom beyond this. */
const FREE = 1e-6;

/**
 * The values that miss `wanted` least in the sum of squares. `rows` has one row an equation and one
 * column an unknown.
 */
export function leastSquares(rows: readonly (readonly number[])[], wanted: readonly number[]): Fit {
  const unknowns = rows[0]?.length ?? 0;
  if (unknowns === 0 || rows.length === 0)
    return { values: [], residuals: wanted.map((value) => -value) };
  const matrix = rows.map((row) => [...row]);
  const inverse = math.pinv(matrix);
  const solved = math.multiply(inverse, [...wanted]);
  // What the equations see of each unknown: the diagonal is 1 where it is seen alone and whole.
  const seen = math.multiply(inverse, matrix) as unknown as readonly (readonly number[])[];
  const residuals = matrix.map(
    (row, i) =>
      row.reduce((sum, factor, k) => sum + factor * (solved[k] ?? 0), 0) - (wanted[i] ?? 0),
  );
  return {
    values: solved.map((value, k) =>
      Math.abs((seen[k]?.[k] ?? 0) - 1) < FREE ? value : undefined,
    ),
    residuals,
  };
}
