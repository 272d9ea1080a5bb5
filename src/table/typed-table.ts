/** A CSV table with a header line: cells by the name of their column, each with its place. */
import { dateWords } from './date-cell';
import { parseLength } from './number-cell';
import { snakeCase, splitLabel } from './label';
import type { SaidLine } from './said-line';
import { saidLine } from './said-line';
import type { SheetRecord } from './sheet';
import { readSheet } from './sheet';
import type { Statements } from './statements';
import { statementsOf } from './statements';
import { excerpt, isBlank, tidyText, withPlainHyphens } from './tidy-text';
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';

/** The text of a cell, tidy; empty where the row has none. */
export interface TypedCell {
  readonly text: string;
  readonly place: Place;
}

/**
 * Gives the cell of a column, by its name or by its number, from 1, in the file; an empty one where
 * the table has no such column.
 */
export type TypedRow<Column extends string> = (column: Column | number) => TypedCell;

/** A table as somebody typed it, with its header read. */
export interface TypedTable<Column extends string> extends Statements {
  readonly columns: ReadonlySet<Column>;
  /** Units stated behind the names of columns, as in `x_in`. */
  readonly units: ReadonlyMap<Column, LengthUnit>;
  /** The heads of the columns that have names of their own, as sizes have. */
  readonly others: readonly TypedCell[];
  /** The cells of a column `note`, which is known where the columns of a table have it. */
  readonly notes: readonly SaidLine[];
  readonly rows: readonly TypedRow<Column>[];
}

/** The column that may go without its name, where it is the first. */
const POINT = 'point';

/** The column for notes, and what else people call it, in lower case with underscores. */
const NOTE = 'note';
const NOTE_WORDS: ReadonlySet<string> = new Set([
  ...['note', 'notes', 'remark', 'remarks', 'comment', 'comments'],
]);

interface Header<Column> {
  readonly row: number;
  readonly at: ReadonlyMap<Column, number>;
  readonly units: ReadonlyMap<Column, LengthUnit>;
  readonly others: readonly TypedCell[];
}

/**
 * Reads a table whose columns may stand in any order, below any number of title lines. Throws
 * InputError `column-missing` if one of `needed` is not there, and `column-unknown` for a column
 * that is neither needed nor in `known`, and for a cell in a column without a name.
 */
export function readTypedTable<Column extends string>(
  text: string,
  file: string,
  needed: readonly Column[],
  known: readonly Column[],
): TypedTable<Column> {
  const all = [...needed, ...known];
  const { header, ...table } = readOpenTable(text, file, all);
  const [unknown] = table.others;
  if (unknown !== undefined) refuseColumn('a column is not known', all, unknown);
  const missing = needed.filter((column) => !table.columns.has(column));
  if (missing.length === 0) return table;
  throw new InputError('column-missing', {
    what: `the table has no column ${missing.join(', ')}`,
    allowed: `a header line with ${all.join(', ')}`,
    got: header.text,
    place: header.place,
  });
}

/**
 * The same for a table that may have none of the columns `known`, and others besides, with names of
 * their own; `header` is its whole header line.
 */
export function readOpenTable<Column extends string>(
  text: string,
  file: string,
  known: readonly Column[],
): TypedTable<Column> & { readonly header: TypedCell } {
  const isHeader = (cells: readonly string[]): boolean => namesColumns(cells, known);
  const { records, comments } = readSheet(text, file, isHeader);
  const start = headerIndex(records, isHeader);
  const first = records[start];
  const header = readHeader(first, file, known);
  const body = records.slice(start + 1);
  const heads = new Set([...header.at.values(), ...header.others.map(({ place }) => place.column)]);
  body.forEach((record) => {
    refuseNameless(record, file, heads);
  });
  return {
    ...statementsOf(file, comments, records.slice(0, start)),
    header: { text: first?.cells.join(',') ?? '', place: { file, row: header.row } },
    columns: new Set(header.at.keys()),
    units: header.units,
    others: header.others,
    notes: notesOf(body, file, header.at),
    rows: body.map(({ row, cells }): TypedRow<Column> => {
      return (name) => {
        const column = typeof name === 'number' ? name : header.at.get(name);
        if (column === undefined) return { text: '', place: { file, row } };
        return { text: tidyText(cells[column - 1] ?? ''), place: { file, row, column } };
      };
    }),
  };
}

/** Whether cells are the header of a table: two of them name columns that are known. */
export function namesColumns(cells: readonly string[], known: readonly string[]): boolean {
  return cells.filter((cell) => columnNamed(cell, known) !== undefined).length > 1;
}

function notesOf(
  body: readonly SheetRecord[],
  file: string,
  at: ReadonlyMap<string, number>,
): readonly SaidLine[] {
  const column = at.get(NOTE);
  if (column === undefined) return [];
  return body.flatMap(({ row, cells }) => {
    const text = tidyText(cells[column - 1] ?? '');
    return text === '' ? [] : [saidLine(text, { file, row, column })];
  });
}

/** The first line with two columns that are known; without one the first that has several cells. */
function headerIndex(
  records: readonly SheetRecord[],
  isHeader: (cells: readonly string[]) => boolean,
): number {
  const known = records.findIndex(({ cells }) => isHeader(cells));
  const several = records.findIndex(
    ({ cells }) => cells.filter((cell) => !isBlank(cell)).length > 1,
  );
  return Math.max(0, known < 0 ? several : known);
}

function readHeader<Column extends string>(
  record: SheetRecord | undefined,
  file: string,
  all: readonly Column[],
): Header<Column> {
  const row = record?.row ?? 1;
  const at = new Map<Column, number>();
  const units = new Map<Column, LengthUnit>();
  const others: TypedCell[] = [];
  record?.cells.forEach((text, i) => {
    if (isBlank(text)) return;
    const cell = { text: tidyText(text), place: { file, row, column: i + 1 } };
    const name = columnNamed(text, all);
    if (name === undefined) {
      others.push(cell);
      return;
    }
    if (at.has(name)) refuseColumn('a column is there twice', all, cell);
    at.set(name, i + 1);
    const { unit } = splitLabel(text);
    if (unit !== undefined && name !== snakeCase(text)) units.set(name, unit);
  });
  // The corner of a table is often left blank, above the names of what each row is about.
  const corner = all.find((column) => column === POINT);
  if (corner !== undefined && !at.has(corner) && isBlank(record?.cells[0] ?? POINT))
    at.set(corner, 1);
  return { row, at, units, others };
}

/** The column that a head names, with its unit behind it or not; undefined for any other. */
export function columnNamed<Column extends string>(
  text: string,
  all: readonly Column[],
): Column | undefined {
  if (isNegated(text)) return undefined;
  const own = snakeCase(text);
  const label = snakeCase(splitLabel(text).text);
  const named = NOTE_WORDS.has(label) ? NOTE : label;
  return all.find((column) => column === named || column === own);
}

/** `-dy` is not `dy`, whose letters it has. */
export function isNegated(label: string): boolean {
  return withPlainHyphens(label).startsWith('-');
}

/** A decimal comma among commas would shift every cell behind it by one. */
function refuseNameless(
  { row, cells }: SheetRecord,
  file: string,
  heads: ReadonlySet<number | undefined>,
): void {
  const i = cells.findIndex((cell, at) => !isBlank(cell) && !heads.has(at + 1));
  if (i < 0) return;
  throw new InputError('column-unknown', {
    what: 'a cell stands in a column without a name',
    allowed: 'cells below the names of the header; a number with a decimal comma between quotes',
    got: excerpt(cells[i] ?? ''),
    place: { file, row, column: i + 1 },
  });
}

function refuseColumn(what: string, all: readonly string[], { text, place }: TypedCell): never {
  throw new InputError('column-unknown', {
    what,
    allowed: all.join(', '),
    got: excerpt(text),
    place,
  });
}

/** A cell as a length in mm, of either sign. Throws InputError `cell-missing` or `cell-not-a-number`. */
export function lengthCell({ text, place }: TypedCell, unit: LengthUnit): number {
  // A plus before a length is what people put against a minus beside it.
  const length = parseLength(text.replace(/^\+ ?(?=[\d.,])/u, ''), unit);
  if (length !== undefined) return length;
  throw new InputError(text === '' ? 'cell-missing' : 'cell-not-a-number', {
    what: text === '' ? 'a length is missing' : `a cell is not a length${dateWords(text)}`,
    allowed: 'a number such as -3.5 or 1 1/4, with its unit if it is another than the file has',
    got: excerpt(text),
    place,
  });
}
