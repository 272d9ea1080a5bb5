/** Least squares by the eigenvectors of ml-matrix, and which unknowns the equations cannot tell. */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import { FREEDOM, OPEN_DIRECTION } from '../../tolerance';

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
  const matrix = new Matrix(rows.map((row) => [...row]));
  const turned = matrix.transpose();
  const aim = turned.mmul(Matrix.columnVector([...wanted])).to1DArray();
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(turned.mmul(matrix), {
    assumeSymmetric: true,
  });
  const directions = realEigenvalues.map((value, k) => ({
    value,
    vector: eigenvectorMatrix.getColumn(k),
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
  const residuals = rows.map(
    (row, i) =>
      row.reduce((sum, factor, k) => sum + factor * (solved[k] ?? 0), 0) - (wanted[i] ?? 0),
  );
  return {
    values: solved.map((value, k) => (freedom(k) < FREEDOM ? value : undefined)),
    residuals,
  };
}
