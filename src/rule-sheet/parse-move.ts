/** One typed move: a length with a sign, or a fraction, which may be improper. */
import { parseLength } from '../table/number-cell';
import { withPlainHyphens } from '../table/tidy-text';
import type { LengthUnit } from '../units';
import { toMillimeters } from '../units';

/** `9/8`; a quarter of a step, added up over many sizes, is often more than a whole. */
const IMPROPER = /^(-?)(\d{1,6}) ?\/ ?([1-9]\d{0,5})$/u;

/**
 * Millimeters of a move such as `+3/8`, `-1 1/4`, `9/8` or `0.5 cm`; undefined if the text is none.
 * A number without a unit is in `unit`.
 */
export function parseMove(text: string, unit: LengthUnit): number | undefined {
  const typed = withPlainHyphens(text).replace(/^\+ ?(?!-)/u, '');
  const [, sign = '', over, under] = IMPROPER.exec(typed) ?? [];
  if (over === undefined) return parseLength(typed, unit);
  return toMillimeters((sign === '-' ? -1 : 1) * (Number(over) / Number(under)), unit);
}
