/** A sheet that says no unit, and has numbers of another ruler than that of its pattern. */
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { UNIT_WORDS } from '../units';
import type { RuleCell } from './rule-sheet';

/** A number typed as a fraction, or as a decimal. */
const FRACTION = /\d ?[/\u2044] ?\d|[\u00BC-\u00BE\u2150-\u215E]/u;
const DECIMAL = /^[+\u2212-]?\d*[.,](\d+)$/u;

/**
 * Throws InputError `unit-missing` where numbers that name no unit can hardly be in `unit`, that of the
 * pattern: an inch is cut into halves down to thirty-seconds, a centimeter into tenths.
 */
export function refuseOtherRuler(cells: readonly RuleCell[], unit: LengthUnit, file: string): void {
  const plain = cells.filter(
    ({ text, mm }) =>
      mm !== undefined && mm !== 0 && /\d$|[\u00BC-\u00BE\u2150-\u215E]$/u.test(text.trim()),
  );
  const strange = plain.find(({ text }) => isOfOther(text.trim(), unit));
  const [first] = plain;
  const found =
    strange === undefined
      ? first && areOfOther(plain, unit)
        ? { cell: first, why: UNLIKELY[unit] }
        : undefined
      : {
          cell: strange,
          why:
            unit === 'in'
              ? 'this is no part of an inch that a ruler has'
              : 'this is a fraction, as of an inch',
        };
  if (found === undefined) return;
  throw new InputError('unit-missing', {
    what: `the sheet does not say its unit; the pattern is in ${UNIT_WORDS[unit]}, and ${found.why}`,
    allowed: 'a line "# unit: in", "# unit: cm" or "# unit: mm", or columns such as dx_cm',
    got: found.cell.text,
    place: { ...found.cell.places.cell, file },
  });
}

const UNLIKELY: Readonly<Record<LengthUnit, string>> = {
  in: 'all of its numbers are whole, as of centimeters',
  cm: 'the least of its numbers moves a point by 3 cm, as numbers of millimeters would',
  mm: 'no number moves a point by 5 mm, as numbers of centimeters seem not to',
};

/** Whether the numbers together are of another size than moves in this unit, which some quarter inch makes. */
function areOfOther(cells: readonly RuleCell[], unit: LengthUnit): boolean {
  if (unit === 'in') return cells.every(({ text }) => /^[-+\u2212]? ?\d+$/u.test(text.trim()));
  const sizes = cells.map(({ mm }) => Math.abs(mm ?? 0));
  return unit === 'cm' ? Math.min(...sizes) >= 30 : Math.max(...sizes) < 5;
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
