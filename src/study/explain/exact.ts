/** Lengths and shares as exact fractions, the way they are written on a board. */
import type { Fraction } from '../../formula/fraction';
import { fraction, fractionOf, quotient } from '../../formula/fraction';
import type { LengthUnit } from '../../units';
import { fromMillimeters, trimmed } from '../../units';
import { ARITHMETIC } from '../../tolerance';

/** Shares of a rule have no larger denominators. */
const LARGEST_BOTTOM = 960;

/** A share such as 0.25 or 0.08333 as the fraction it stands for; others stay decimals. */
export function shareFraction(share: number): Fraction {
  for (let bottom = 1; bottom <= LARGEST_BOTTOM; bottom++) {
    const top = Math.round(share * bottom);
    if (Math.abs(top / bottom - share) < ARITHMETIC) return fraction(top, bottom);
  }
  return fraction(share);
}

/** A length in mm as a fraction of its unit, exact to a millionth: charts are not finer. */
export function lengthFraction(mm: number, unit: LengthUnit): Fraction {
  return fractionOf(Number(trimmed(fromMillimeters(mm, unit), 6)));
}

/** `1 3/8`, `-7/16`, `1/3`; in a metric unit decimals where they end, such as `0.625`. */
export function exactText(value: Fraction, unit: LengthUnit): string {
  const { top, bottom } = value;
  if (!Number.isInteger(top)) return trimmed(quotient(value), 4);
  if (bottom === 1) return String(top);
  if (unit !== 'in' && 1_000_000 % bottom === 0) return trimmed(quotient(value), 6);
  const sign = top < 0 ? '-' : '';
  const whole = Math.floor(Math.abs(top) / bottom);
  const rest = Math.abs(top) % bottom;
  return `${sign}${whole > 0 ? `${whole} ` : ''}${rest}/${bottom}`;
}
