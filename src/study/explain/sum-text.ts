/** A sum of measurements and lengths as it is written on a board. */
import { quotient } from '../../formula/fraction';
import type { LinearForm } from '../../formula/linear-form';
import { ruleText } from '../../grade/rule-formula-text';
import type { LengthUnit } from '../../units';
import { exactText, lengthFraction } from './exact';

/** The sum with its constant in the unit: `1/4 waist_girth + 1 in - waist_move`. */
export function sumText({ constant, terms }: LinearForm, unit: LengthUnit): string {
  const length = exactText(lengthFraction(Math.abs(quotient(constant)), unit), unit);
  if (terms.size === 0) return `${quotient(constant) < 0 ? '-' : ''}${length} ${unit}`;
  const sum = ruleText('linear', terms);
  if (length === '0') return sum;
  return `${sum} ${quotient(constant) < 0 ? '-' : '+'} ${length} ${unit}`;
}
