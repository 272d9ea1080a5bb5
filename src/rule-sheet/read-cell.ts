/** What stands in the cells of a rule sheet. */
import { MEASUREMENTS } from '../chart/vocabulary';
import type { Blanks } from '../table/blanks';
import { dateWords } from '../table/date-cell';
import { excerpt } from '../table/tidy-text';
import { InputError } from '../errors';
import { parseMove } from './parse-move';
import type { TypedCell } from '../table/typed-table';
import type { LengthUnit } from '../units';
import { UNIT_WORDS } from '../units';
import type { CellValue } from './rule-sheet';

/** A name with an underscore, or a word beside a digit or a sign, tells a formula from a slip. */
const FORMULA = /[a-z]_[a-z]|[\d+*/()].*[a-z]{3}|[a-z]{3}.*[\d+*/()]/u;

/** A move as millimeters or a formula; neither where missing. Throws `cell-not-a-number`. */
export function readMove(cell: TypedCell, unit: LengthUnit, blanks: Blanks): CellValue {
  const { text, place } = cell;
  if (blanks.isBlank(cell)) return { text, mm: blanks.mm };
  const mm = parseMove(text, unit);
  if (mm !== undefined) return { text, mm };
  const date = dateWords(text);
  if (date === '' && (FORMULA.test(text) || MEASUREMENTS.some(({ name }) => name === text))) {
    return { text, mm: undefined, formula: text };
  }
  throw new InputError('cell-not-a-number', {
    what: `a move is not a number${date}`,
    allowed:
      `a number of ${UNIT_WORDS[unit]} such as 0.375, 3/8 or -1 1/4, or a blank; ` +
      'a dash for zero only below a line "# blank: 0"',
    got: excerpt(text),
    place,
  });
}
