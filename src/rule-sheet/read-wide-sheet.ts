/** A rule sheet with one size a column, and the axis of each row named. */
import { snakeCase } from '../table/label';
import type { Sheet, SheetRecord } from '../table/sheet';
import { excerpt, isBlank, tidyText } from '../table/tidy-text';
import { InputError } from '../errors';
import { readMove, readName } from './read-cell';
import { moveLabel, sheetUnit } from './rule-columns';
import type { RuleCell, RuleSheet } from './rule-sheet';

/** The columns that are no sizes. */
const NAMES: readonly string[] = ['piece', 'point', 'axis', 'note'];

/** The header line of a wide sheet, which has a column `axis`; undefined if there is none. */
export function wideHeader({ records }: Sheet): SheetRecord | undefined {
  return records.find(({ cells }) =>
    ['point', 'axis'].every((name) => cells.some((cell) => snakeCase(cell) === name)),
  );
}

/** Reads the rows below `header`. Throws InputError `sheet-malformed` with row and column. */
export function readWideSheet(
  { records, comments }: Sheet,
  header: SheetRecord,
  file: string,
): RuleSheet {
  const columnOf = (name: string): number =>
    header.cells.findIndex((cell) => snakeCase(cell) === name);
  const [pieceAt, pointAt, axisAt] = [columnOf('piece'), columnOf('point'), columnOf('axis')];
  const sizes = header.cells.flatMap((text, column) =>
    NAMES.includes(snakeCase(text)) || isBlank(text) ? [] : [{ size: tidyText(text), column }],
  );
  const lines = records
    .filter(({ row }) => row > header.row)
    .map((record) => ({ record, label: labeled(record, axisAt, file) }));
  const unit = sheetUnit(
    { comments, file },
    lines.flatMap(({ label }) => label.unit ?? []),
  );
  const cells = lines.flatMap(({ record, label }) => {
    const at = (column: number) => ({
      text: tidyText(record.cells[column] ?? ''),
      place: { file, row: record.row, column: column + 1 },
    });
    const names = readName(pieceAt < 0 ? undefined : at(pieceAt), at(pointAt));
    const point = `${names.piece}.${names.point}`;
    return sizes.map(({ size, column }): RuleCell => {
      const { text, place } = at(column);
      const cell = { ...place, size, point };
      return {
        ...names,
        ...label.move,
        ...readMove({ text, place: cell }, unit),
        size,
        places: {
          cell,
          piece: at(pieceAt < 0 ? pointAt : pieceAt).place,
          point: at(pointAt).place,
          size: { file, row: header.row, column: column + 1 },
        },
      };
    });
  });
  return { file, unit, comments, cells };
}

function labeled({ row, cells }: SheetRecord, column: number, file: string) {
  const text = cells[column] ?? '';
  const label = moveLabel(text);
  if (label !== undefined) return label;
  throw new InputError('sheet-malformed', {
    what: 'the axis of a row is not known',
    allowed: 'dx, dy, step_dx, step_dy, with the unit behind it or in a line "# unit: in"',
    got: excerpt(text),
    place: { file, row, column: column + 1 },
  });
}
