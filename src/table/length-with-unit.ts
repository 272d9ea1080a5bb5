/** A length that stands alone: nothing near it says its unit, so it must do so itself. */
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { parseNumberCell } from './number-cell';
import { toMillimeters } from '../units';

/**
 * The length in mm, or undefined if the text is none. Throws InputError `bad-option` for a number
 * other than 0 without its unit, with both readings that are likely: in `unit`, the one of the file
 * at hand, and in millimeters.
 */
export function lengthWithUnit(text: string, unit: LengthUnit, field: string): number | undefined {
  const cell = parseNumberCell(text);
  if (cell.kind !== 'number') return undefined;
  if (cell.unit !== undefined) return toMillimeters(cell.value, cell.unit);
  if (cell.value === 0) return 0;
  const typed = text.trim();
  throw new InputError('bad-option', {
    what: 'a length does not say its unit',
    allowed: `${typed}${unit === 'mm' ? 'in' : unit} or ${typed}mm`,
    got: typed,
    place: { field },
  });
}
