/** Formulas of the chart's increments, such as `1/4 waist_girth`: rules that outlive a chart. */
import { needValues } from '../chart/need-values';
import type { SizeChart } from '../chart/size-chart';
import type { Place } from '../errors';
import { InputError } from '../errors';
import { checkDimension } from '../formula/dimension';
import { parseFormula } from '../formula/parse';
import { valueAt } from '../formula/value-at';
import { SAME_PLACE } from '../tolerance';
import { wantedNames } from '../table/near-names';

/** mm for the growth from one size of a chart to another, by their places in it. */
export type IncrementFormula = (from: number, to: number) => number;

/**
 * Reads a formula in which the name of a measurement stands for its growth from size to size.
 * Between a number and a name the sign of multiplication may be left out. Throws InputError
 * `measurement-missing` without a chart, `formula-unknown-name` for a row that the chart does not
 * have, `rule-moves-base` for a formula that is not zero where nothing grows, and what every formula
 * throws.
 */
export function incrementFormula(
  text: string,
  place: Place,
  chart: SizeChart | undefined,
): IncrementFormula {
  const formula = parseFormula(withProducts(text), place);
  if (chart === undefined) {
    throw new InputError('measurement-missing', {
      what: 'a rule is no number, and a formula needs a chart',
      allowed: 'a length, or a formula together with a chart of measurements',
      got: text,
      place,
    });
  }
  const rows = chart.rows.map(({ name }) => name);
  const unknown = formula.names.find((name) => !rows.includes(name));
  if (unknown !== undefined) {
    throw new InputError('formula-unknown-name', {
      what: `the chart has no row "${unknown}"`,
      ...wantedNames(unknown, rows),
      got: text,
      place,
    });
  }
  checkDimension(formula, 1, () => 1);
  if (Math.abs(valueAt(formula, formula.tree, () => 0)) > SAME_PLACE) {
    throw new InputError('rule-moves-base', {
      what: 'a rule moves its point in the base size, where nothing has grown yet',
      allowed: 'a formula that is zero where all its measurements are',
      got: text,
      place,
    });
  }
  const columns = new Map(formula.names.map((name) => [name, needValues(chart, name)]));
  return (from, to) =>
    valueAt(formula, formula.tree, (name) => {
      const values = columns.get(name) ?? [];
      return (values[to] ?? NaN) - (values[from] ?? NaN);
    });
}

const UNITS = 'in|cm|mm';

/** `1/4 waist_girth` as `1/4 * waist_girth`; a unit stays with its number. */
function withProducts(text: string): string {
  return text.replace(new RegExp(`(\\d)\\s+(?!(?:${UNITS})\\b)(?=[A-Za-z_])`, 'gu'), '$1 * ');
}
