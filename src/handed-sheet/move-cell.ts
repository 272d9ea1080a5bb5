/** One typed move: a signed number or fraction, which may be improper, as rules often are. */
import { parseNumberCell } from '../chart/number-cell';
import { excerpt, withPlainHyphens } from '../chart/tidy-text';
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { UNIT_WORDS, toMillimeters } from '../units';

/** `9/8`, with or without a sign; a quarter of a step is often more than a whole. */
const IMPROPER = /^(-?)(\d{1,6}) ?\/ ?(\d{1,6})$/u;

/**
 * Millimeters of a cell in a column of `unit`, undefined for a blank. Throws `cell-not-a-number`, or
 * `unit-contradicted` where the cell names another unit than its column.
 */
export function readMove(text: string, unit: LengthUnit, place: Place): number | undefined {
  const typed = withPlainHyphens(text).replace(/^\+ ?/u, '');
  const [, sign = '', over, under] = IMPROPER.exec(typed) ?? [];
  if (over !== undefined && Number(under) > 0)
    return toMillimeters((sign === '-' ? -1 : 1) * (Number(over) / Number(under)), unit);
  const cell = parseNumberCell(typed);
  if (cell.kind === 'blank') return undefined;
  if (cell.kind === 'not-a-number')
    throw new InputError('cell-not-a-number', {
      what: 'a move is not a number',
      allowed: `a number of ${UNIT_WORDS[unit]} such as 0.375, 3/8 or -1 1/4, or a blank`,
      got: excerpt(text),
      place,
    });
  if (cell.unit !== undefined && cell.unit !== unit)
    throw new InputError('unit-contradicted', {
      what: `a cell is in ${UNIT_WORDS[cell.unit]}, its column in ${UNIT_WORDS[unit]}`,
      allowed: `numbers of ${UNIT_WORDS[unit]}`,
      got: excerpt(text),
      place,
    });
  return toMillimeters(cell.value, unit);
}
