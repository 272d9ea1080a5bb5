import { compileFormula } from '../../src/formula/compile';
import type { Formula } from '../../src/formula/formula';
import { parseFormula } from '../../src/formula/parse';

export const PLACE = { parameter: 'hem_taper' } as const;

export function formula(text: string): Formula {
  return parseFormula(text, PLACE);
}

/** The value of a formula, with numbers for its names. */
export function valueOf(text: string, values: Readonly<Record<string, number>> = {}): number {
  const parsed = formula(text);
  const names = Object.keys(values);
  const evaluate = compileFormula(parsed, (name) => names.indexOf(name));
  return evaluate(Float64Array.from(Object.values(values)));
}
