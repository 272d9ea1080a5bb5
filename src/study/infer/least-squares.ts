/** Least squares by mathjs, and which unknowns the equations cannot tell. */
import { create, eigsDependencies, multiplyDependencies, transposeDependencies } from 'mathjs';
import { FREEDOM, OPEN_DIRECTION } from '../../tolerance';

/** Loaded by `infer` alone: matrices are the larger part of mathjs. */
const math = create({ ...eigsDependencies, ...multiplyDependencies, ...transposeDependencies });

/** The best values, and what they leave over, in the unit of what was wanted. */
export interface Fit {
  /** One an unknown; undefined where the equations cannot tell it apart from others, or at all. */
  readonly values: readonly (number | undefined)[];
  /** One an equation: what it gives less what it should. */
  readonly residuals: readonly number[];
}

/**
 * The values that miss `wanted` least in the sum of squares. `rows` has one row an equation and one
 * column an unknown. The normal equations are solved along their eigenvectors, so that what they
 * leave open is seen instead of dividing by it.
 */
export function leastSquares(rows: readonly (readonly number[])[], wanted: readonly number[]): Fit {
  const unknowns = rows[0]?.length ?? 0;
  if (unknowns === 0) return { values: [], residuals: wanted.map((value) => -value) };
  const matrix = rows.map((row) => [...row]);
  const turned = math.transpose(matrix);
  const aim = math.multiply(turned, [...wanted]);
  const directions = math
    .eigs(math.multiply(turned, matrix))
    .eigenvectors.map(({ value, vector }) => ({
      value: Number(value),
      vector: vector as number[],
    }));
  const largest = Math.max(...directions.map(({ value }) => value));
  const seen = directions.filter(({ value }) => value > OPEN_DIRECTION * largest);
  const solved = Array.from({ length: unknowns }, (_, k) =>
    seen.reduce((sum, { value, vector }) => {
      const along = vector.reduce((all, part, i) => all + part * (aim[i] ?? 0), 0);
      return sum + ((vector[k] ?? 0) * along) / value;
    }, 0),
  );
  const freedom = (k: number): number =>
    1 - seen.reduce((sum, { vector }) => sum + (vector[k] ?? 0) ** 2, 0);
  const residuals = matrix.map(
    (row, i) =>
      row.reduce((sum, factor, k) => sum + factor * (solved[k] ?? 0), 0) - (wanted[i] ?? 0),
  );
  return {
    values: solved.map((value, k) => (freedom(k) < FREEDOM ? value : undefined)),
    residuals,
  };
}
