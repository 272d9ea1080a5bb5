/** One number as people type it: decimals with a point or a comma, or inches as a mixed fraction. */
import type { LengthUnit } from '../units';
import { toMillimeters } from '../units';
import { tidyText, withPlainHyphens } from './tidy-text';
import { unitNamed } from './unit-name';

/** What a cell holds. `value` is in `unit`, or in the chart's unit if the cell names none. */
export type NumberCell =
  | { readonly kind: 'number'; readonly value: number; readonly unit?: LengthUnit }
  | { readonly kind: 'blank' }
  | { readonly kind: 'not-a-number' };

const NOT_A_NUMBER: NumberCell = { kind: 'not-a-number' };

/** ¼ ½ ¾ and ⅐ to ⅞, with the whole number and the blank or hyphen that may stand before them. */
const FRACTION_SIGN = /(?:(\d)[ -]?)?([\u00BC-\u00BE\u2150-\u215E])(?!\d)/gu;

const NUMBER =
  /^(?<sign>-?) ?(?:(?<decimal>\d{1,9}(?:[.,]\d+)?|[.,]\d+)|(?:(?<whole>\d{1,9})(?:[ -]| ?(?:and|&) ?))?(?<over>\d{1,9}) ?[/\u2044] ?(?<under>\d{1,9})) ?(?<unit>\D*)$/u;

/**
 * Reads one cell. Fractions must be proper (`26 5/2` and `53/2` are not numbers: they are more
 * often slips of the pen or two sizes than lengths); there is no exponent and no thousands mark.
 * `2-1/2` and `2 and 1/2` are the trade's mixed number; a minus with a blank beside it takes away, and is none.
 */
export function parseNumberCell(text: string): NumberCell {
  const typed = withPlainHyphens(text);
  if (typed === '') return { kind: 'blank' };
  const parts = NUMBER.exec(spellOutFractions(typed))?.groups;
  if (parts === undefined) return NOT_A_NUMBER;

  const size = magnitude(parts);
  if (size === undefined) return NOT_A_NUMBER;
  const value = parts.sign === '-' && size !== 0 ? -size : size;
  if (parts.unit === undefined || parts.unit === '') return { kind: 'number', value };
  const unit = unitNamed(parts.unit);
  return unit === undefined ? NOT_A_NUMBER : { kind: 'number', value, unit };
}

/** `1,020` may be a decimal or a thousand; `0.020` and `12.345` are no thousands of millimeters. */
const THOUSAND = /^(?:[1-9]\d{0,2},\d{3}|[1-9]\.\d{3})$/u;

/** Whether a mark in a number of millimeters may part thousands: nothing is drawn to a thousandth. */
export function mayPartThousands(text: string): boolean {
  return THOUSAND.test(tidyText(text));
}

/**
 * A length in millimeters, such as `1/16in` or `0.5mm`, or undefined if the text is not one.
 * A number without a unit is in `defaultUnit`. The length may be zero or negative.
 */
export function parseLength(text: string, defaultUnit: LengthUnit): number | undefined {
  const cell = parseNumberCell(text);
  return cell.kind === 'number' ? toMillimeters(cell.value, cell.unit ?? defaultUnit) : undefined;
}

/** `26½` as `26 1⁄2`. */
function spellOutFractions(text: string): string {
  return text.replace(
    FRACTION_SIGN,
    (_, whole: string | undefined, sign: string) =>
      `${whole === undefined ? '' : `${whole} `}${sign.normalize('NFKC')}`,
  );
}

function magnitude(parts: Readonly<Record<string, string | undefined>>): number | undefined {
  if (parts.decimal !== undefined) return Number(parts.decimal.replace(',', '.'));
  const under = Number(parts.under);
  const over = Number(parts.over);
  if (over >= under) return undefined;
  // One division, so that the result is the double nearest to the fraction.
  return (Number(parts.whole ?? 0) * under + over) / under;
}
