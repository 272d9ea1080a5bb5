/** What a cell of a rule sheet gives for each size. */
import type { SizeChart } from '../chart/size-chart';
import { incrementFormula } from './increment-formula';
import type { RuleCell } from './rule-sheet';
import type { SizeList } from './size-list';

/** The neighbor of a size on the base's side; the base is its own. */
export function towardBase(size: number, base: number): number {
  return size + Math.sign(base - size);
}

/**
 * mm, one a size, in the form of the cell; undefined for sizes of which it says nothing. A formula
 * in a step stands for what grows in that one step, `chart` has the sizes of the list then. Throws
 * what formulas throw.
 */
export function cellValues(
  { form, mm, formula, size, reversed, places }: RuleCell,
  { labels, base }: SizeList,
  chart: SizeChart | undefined,
): readonly (number | undefined)[] {
  const growth = formula === undefined ? undefined : incrementFormula(formula, places.cell, chart);
  return labels.map((label, to) => {
    if (size !== '' && size !== label) return undefined;
    if (growth !== undefined) {
      const from = form === 'step' ? towardBase(to, base) : base;
      return reversed ? 0 - growth(to, from) : growth(from, to);
    }
    // The same growth from each size to the next: seen from the base, smaller sizes shrink by it.
    return size === '' && mm !== undefined ? Math.sign(to - base) * mm : mm;
  });
}
