/** One value of a formula, without slots: for formulas that are read once. */
import { compileFormula } from './compile';
import type { Formula } from './formula';
import type { FormulaTree } from './tree';

/** The value of `tree`, a part of the formula, where its names have these values. */
export function valueAt(
  formula: Formula,
  tree: FormulaTree,
  valueOf: (name: string) => number,
): number {
  const values: number[] = [];
  const evaluate = compileFormula({ ...formula, tree }, (name) => values.push(valueOf(name)) - 1);
  return evaluate(Float64Array.from(values));
}
