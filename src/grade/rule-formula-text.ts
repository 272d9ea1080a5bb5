/** A rule in words and figures, in plain ASCII. */
import type { Fraction } from '../formula/fraction';
import { quotient } from '../formula/fraction';
import type { Gradient } from './rule-formula-gradients';

/** Said behind every rule that is not the same in all sizes. */
const REMARK: Readonly<Record<Gradient['kind'], string>> = {
  linear: '',
  smooth: ' (smooth at base)',
  implicit: ' (numeric at base)',
};

/** Fractions with a larger denominator are written as decimals; shares give up to 960. */
const LARGEST_DENOMINATOR = 960;

const SIGNIFICANT_DIGITS = 4;

/** Such as `1/3 hip_girth - 1/12 waist_girth`; terms with a plus sign come first. */
export function ruleText(kind: Gradient['kind'], terms: ReadonlyMap<string, Fraction>): string {
  const signed = [...terms].map(([name, coefficient]) => ({
    minus: quotient(coefficient) < 0,
    text: `${factorText(coefficient)}${name}`,
  }));
  const ordered = [...signed.filter(({ minus }) => !minus), ...signed.filter(({ minus }) => minus)];
  const joined = ordered.map(({ minus, text }, i) =>
    i === 0 ? `${minus ? '-' : ''}${text}` : `${minus ? ' - ' : ' + '}${text}`,
  );
  return `${joined.join('') || '0'}${REMARK[kind]}`;
}

/** The size of a coefficient and a space, or nothing for one. */
function factorText({ top, bottom }: Fraction): string {
  const size = Math.abs(top);
  const isExact = Number.isInteger(size) && bottom <= LARGEST_DENOMINATOR;
  const decimal = Number((size / bottom).toPrecision(SIGNIFICANT_DIGITS));
  const text = isExact && bottom > 1 ? `${size}/${bottom}` : `${decimal}`;
  return text === '1' ? '' : `${text} `;
}
