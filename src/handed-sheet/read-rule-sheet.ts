/** Reads a sheet of grade rules: one size a row, or one size a column. */
import type { Sheet, SheetRecord } from '../chart/sheet';
import { readSheet } from '../chart/sheet';
import { excerpt, isBlank, tidyText } from '../chart/tidy-text';
import { unitNamed } from '../chart/unit-name';
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { readMove } from './move-cell';
import type { MoveColumn } from './move-column';
import { moveColumn } from './move-column';
import type { RuleCell, RuleSheet } from './rule-sheet';

const LAYOUTS =
  'columns piece, point, size, dx_in, dy_in (step_dx_in, step_dy_in), ' +
  'or piece, point, axis and one column a size';

/**
 * Reads the text of a sheet; `file` names it in messages. Long sheets have the columns of
 * grade-rules.csv, others are kept out of the way; wide sheets have a column `axis` with `dx`, `dy`,
 * `step_dx` or `step_dy`. Without a column `piece` the points are named `front.side_hip`. Throws
 * InputError `sheet-malformed`, `unit-missing`, `unit-contradicted`, `size-missing`,
 * `cell-not-a-number` or `cell-twice` with the row and the column.
 */
export function readRuleSheet(text: string, file: string): RuleSheet {
  const sheet = readSheet(text, file);
  const statements = statementsOf(sheet);
  const headerIndex = sheet.records.findIndex(({ cells }) => columnOf(cells, 'point') >= 0);
  const header = sheet.records[headerIndex];
  if (header === undefined) throw malformed('the sheet has no header line', file, sheet);
  const stated = unitNamed(statements.get('unit') ?? '');
  const context: Context = { file, header, stated };
  const rows = sheet.records.slice(headerIndex + 1);
  const wide = columnOf(header.cells, 'size') < 0;
  const { unit, cells } = wide ? readWide(context, rows) : readLong(context, rows);
  if (cells.length === 0) throw malformed('the sheet has no rules', file, sheet);
  refuseTwice(cells);
  return { file, unit, statements, cells };
}

interface Context {
  readonly file: string;
  readonly header: SheetRecord;
  readonly stated: LengthUnit | undefined;
}

interface Read {
  readonly unit: LengthUnit;
  readonly cells: readonly RuleCell[];
}

function readLong(context: Context, rows: readonly SheetRecord[]): Read {
  const { file, header } = context;
  const columns = header.cells.flatMap((text, column) => {
    const move = moveColumn(text);
    return move === undefined ? [] : [{ move, column }];
  });
  const unit = oneUnit(
    columns.map(({ move }) => move),
    context,
  );
  const sizeColumn = columnOf(header.cells, 'size');
  const cells = rows.flatMap((record) => {
    const names = namesOf(context, record);
    const size = tidyText(record.cells[sizeColumn] ?? '');
    const place = { file, row: record.row, point: `${names.piece}.${names.point}` };
    if (size === '') throw sizeMissing({ ...place, column: sizeColumn + 1 });
    return columns.map(({ move: { axis, form }, column }): RuleCell => {
      const at = { ...place, size, column: column + 1 };
      const mm = readMove(record.cells[column] ?? '', unit, at);
      return { ...names, size, axis, form, mm, place: at };
    });
  });
  return { unit, cells };
}

function readWide(context: Context, rows: readonly SheetRecord[]): Read {
  const { file, header } = context;
  const axisColumn = columnOf(header.cells, 'axis');
  if (axisColumn < 0)
    throw new InputError('sheet-malformed', {
      what: 'the sheet has neither a column for the size nor one for the axis',
      allowed: LAYOUTS,
      got: excerpt(header.cells.join(', ')),
      place: { file, row: header.row },
    });
  const others = ['piece', 'point'].map((name) => columnOf(header.cells, name));
  const sizes = header.cells.flatMap((text, column) =>
    column === axisColumn || others.includes(column) || isBlank(text)
      ? []
      : [{ size: tidyText(text), column }],
  );
  const lines = rows.map((record) => {
    const text = record.cells[axisColumn] ?? '';
    const move = moveColumn(text);
    if (move !== undefined) return { record, move };
    throw new InputError('sheet-malformed', {
      what: 'the axis of a row is not known',
      allowed: 'dx, dy, step_dx, step_dy, with the unit behind it or in a line "# unit: in"',
      got: excerpt(text),
      place: { file, row: record.row, column: axisColumn + 1 },
    });
  });
  const unit = oneUnit(
    lines.map(({ move }) => move),
    context,
  );
  const cells = lines.flatMap(({ record, move: { axis, form } }) => {
    const names = namesOf(context, record);
    return sizes.map(({ size, column }): RuleCell => {
      const point = `${names.piece}.${names.point}`;
      const place = { file, row: record.row, column: column + 1, size, point };
      const mm = readMove(record.cells[column] ?? '', unit, place);
      return { ...names, size, axis, form, mm, place };
    });
  });
  return { unit, cells };
}

/** Piece and point of a record, from two columns or from one. */
function namesOf({ file, header }: Context, { row, cells }: SheetRecord) {
  const pieceColumn = columnOf(header.cells, 'piece');
  const pointColumn = columnOf(header.cells, 'point');
  const typed = tidyText(cells[pointColumn] ?? '');
  const joined = pieceColumn < 0 ? typed : `${tidyText(cells[pieceColumn] ?? '')}.${typed}`;
  const [piece = '', point = '', ...more] = joined.split('.');
  if (piece !== '' && point !== '' && more.length === 0) return { piece, point };
  throw new InputError('sheet-malformed', {
    what: 'a row does not name its piece and point',
    allowed: 'names as in graded-points.csv, such as front and side_hip',
    got: excerpt(joined),
    place: { file, row, column: pointColumn + 1 },
  });
}

function oneUnit(columns: readonly MoveColumn[], { file, header, stated }: Context): LengthUnit {
  const place = { file, row: header.row };
  if (columns.length === 0)
    throw new InputError('sheet-malformed', {
      what: 'the sheet has no column of moves',
      allowed: LAYOUTS,
      got: excerpt(header.cells.join(', ')),
      place,
    });
  const named = new Set(columns.flatMap(({ unit }) => (unit === undefined ? [] : [unit])));
  if (stated !== undefined) named.add(stated);
  const [unit, other] = named;
  if (other !== undefined)
    throw new InputError('unit-contradicted', {
      what: 'the sheet names more than one unit',
      allowed: 'one unit for all columns',
      got: [...named].join(', '),
      place,
    });
  if (unit !== undefined) return unit;
  throw new InputError('unit-missing', {
    what: 'the sheet does not say its unit',
    allowed: 'columns such as dx_in or dx_cm, or a line "# unit: in"',
    got: excerpt(header.cells.join(', ')),
    place,
  });
}

function columnOf(header: readonly string[], name: string): number {
  return header.findIndex((cell) => tidyText(cell).toLowerCase() === name);
}

function statementsOf({ comments }: Sheet): ReadonlyMap<string, string> {
  return new Map(
    comments.flatMap(({ text }): [string, string][] => {
      const [, name, value] = /^(\w+)\s*[:=]\s*(.+)$/u.exec(text) ?? [];
      return name === undefined || value === undefined ? [] : [[name.toLowerCase(), value]];
    }),
  );
}

function refuseTwice(cells: readonly RuleCell[]): void {
  const seen = new Map<string, RuleCell>();
  for (const cell of cells) {
    const { piece, point, size, axis, form, place } = cell;
    const key = [piece, point, size, axis, form].join('\n');
    const first = seen.get(key);
    if (first !== undefined)
      throw new InputError('cell-twice', {
        what: 'the same move stands in the sheet twice',
        allowed: 'one row a point and size',
        got: `it stands in row ${first.place.row ?? '?'} already`,
        place,
      });
    seen.set(key, cell);
  }
}

function sizeMissing(place: Place): InputError {
  return new InputError('size-missing', {
    what: 'a row does not say its size',
    allowed: 'the label of a size of the chart',
    got: '',
    place,
  });
}

function malformed(what: string, file: string, { records }: Sheet): InputError {
  return new InputError('sheet-malformed', {
    what,
    allowed: LAYOUTS,
    got: excerpt(records[0]?.cells.join(', ') ?? ''),
    place: { file, row: records[0]?.row ?? 1 },
  });
}
