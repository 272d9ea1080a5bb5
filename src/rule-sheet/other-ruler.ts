/** A sheet that says no unit, and has numbers of another ruler than that of its pattern. */
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import type { RuleCell } from './rule-sheet';

/** A number typed as a fraction, or as a decimal. */
const FRACTION = /\d ?[/\u2044] ?\d|[\u00BC-\u00BE\u2150-\u215E]/u;
const DECIMAL = /^[+\u2212-]?\d*[.,](\d+)$/u;

/**
 * Throws InputError `unit-missing` where a number that names no unit can hardly be in `unit`, that of
 * the pattern: an inch is cut into halves down to thirty-seconds, a centimeter into tenths.
 */
export function refuseOtherRuler(cells: readonly RuleCell[], unit: LengthUnit, file: string): void {
  const strange = cells.find(({ text, mm }) => mm !== undefined && isOfOther(text.trim(), unit));
  if (strange === undefined) return;
  throw new InputError('unit-missing', {
    what:
      unit === 'in'
        ? 'the sheet does not say its unit; the pattern is in inches, and this is no part of an inch that a ruler has'
        : `the sheet does not say its unit; the pattern is in ${unit}, and this is a fraction, as of an inch`,
    allowed: 'a line "# unit: in", "# unit: cm" or "# unit: mm", or columns such as dx_cm',
    got: strange.text,
    place: { ...strange.places.cell, file },
  });
}

function isOfOther(text: string, unit: LengthUnit): boolean {
  if (unit !== 'in') return FRACTION.test(text);
  const digits = DECIMAL.exec(text)?.[1]?.replace(/0+$/u, '');
  if (digits === undefined || digits === '') return false;
  // One decimal is no rounding of a fraction; two round sixteenths, more round thirty-seconds.
  const parts = digits.length === 1 ? 2 : digits.length === 2 ? 16 : 32;
  const [last, one] = [Number(digits), 10 ** digits.length];
  const nearest = (Math.round((last * parts) / one) * one) / parts;
  return Math.abs(nearest - last) >= 1;
}
