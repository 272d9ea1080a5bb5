/** What stands in the cells of a rule sheet. */
import { excerpt } from '../table/tidy-text';
import { InputError } from '../errors';
import { parseMove } from './parse-move';
import type { TableCell } from '../table/typed-table';
import type { LengthUnit } from '../units';
import { UNIT_WORDS } from '../units';
import type { RuleCell } from './rule-sheet';

/** Names of measurements, by which a formula is told from a slip of the pen. */
const NAMED = /[a-z]_[a-z]/u;

/** A move as millimeters or a formula; neither where blank. Throws `cell-not-a-number`. */
export function readMove(
  { text, place }: TableCell,
  unit: LengthUnit,
): Pick<RuleCell, 'mm' | 'formula'> {
  if (text === '') return { mm: undefined };
  const mm = parseMove(text, unit);
  if (mm !== undefined) return { mm };
  if (NAMED.test(text)) return { mm: undefined, formula: text };
  throw new InputError('cell-not-a-number', {
    what: 'a move is not a number',
    allowed: `a number of ${UNIT_WORDS[unit]} such as 0.375, 3/8 or -1 1/4, or a blank`,
    got: excerpt(text),
    place,
  });
}

/**
 * Piece and point from two cells, or from one as in `front.side_hip`. Throws InputError
 * `sheet-malformed` where one of them is not named.
 */
export function readName(
  pieceCell: TableCell | undefined,
  { text, place }: TableCell,
): Pick<RuleCell, 'piece' | 'point'> {
  const joined =
    pieceCell === undefined || pieceCell.text === '' ? text : `${pieceCell.text}.${text}`;
  const [piece = '', point = '', ...more] = joined.split('.');
  if (piece !== '' && point !== '' && more.length === 0) return { piece, point };
  throw new InputError('sheet-malformed', {
    what: 'a row does not name its piece and point',
    allowed: 'names as in graded-points.csv, such as front and side_hip, or front.side_hip',
    got: excerpt(joined),
    place,
  });
}
