/** A CSV table with a header line: cells by the name of their column, each with its place. */
import { parseLength } from './number-cell';
import { snakeCase, splitLabel } from './label';
import type { SheetComment } from './sheet';
import { readSheet } from './sheet';
import { excerpt, isBlank, tidyText } from './tidy-text';
import { unitNamed } from './unit-name';
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { LENGTH_UNITS } from '../units';

/** The text of a cell, tidy; empty where the row has none. */
export interface TableCell {
  readonly text: string;
  readonly place: Place;
}

/** Gives the cell of a column; an empty one where the table has no such column. */
export type TableRow<Column extends string> = (column: Column) => TableCell;

/** A table whose columns are known; a column that is not in `columns` has empty cells. */
export interface Table<Column extends string> {
  /** Its name for messages. */
  readonly file: string;
  readonly columns: ReadonlySet<Column>;
  /** Units stated behind the names of columns, as in `x_in`. */
  readonly units: ReadonlyMap<Column, LengthUnit>;
  readonly rows: readonly TableRow<Column>[];
  readonly comments: readonly SheetComment[];
}

/**
 * Reads a table whose columns may stand in any order. Throws InputError `column-missing` if one of
 * `needed` is not there, and `column-unknown` for a column that is neither needed nor in `known`.
 */
export function readTable<Column extends string>(
  text: string,
  file: string,
  needed: readonly Column[],
  known: readonly Column[],
): Table<Column> {
  const { records, comments } = readSheet(text, file);
  // A title may stand above the header; a table has more than one column.
  const start = records.findIndex(({ cells }) => cells.filter((cell) => !isBlank(cell)).length > 1);
  const [header, ...body] = records.slice(Math.max(0, start));
  const all = [...needed, ...known];
  const units = new Map<Column, LengthUnit>();
  const at = new Map<Column, number>();
  header?.cells.forEach((cell, i) => {
    if (tidyText(cell) === '') return;
    const { text: label, unit } = splitLabel(cell);
    const name = all.find((column) => column === snakeCase(label) || column === snakeCase(cell));
    if (name === undefined || at.has(name)) {
      throw new InputError('column-unknown', {
        what: name === undefined ? 'a column is not known' : 'a column is there twice',
        allowed: all.join(', '),
        got: excerpt(cell),
        place: { file, row: header.row, column: i + 1 },
      });
    }
    at.set(name, i);
    if (unit !== undefined && name !== snakeCase(cell)) units.set(name, unit);
  });
  const missing = needed.filter((column) => !at.has(column));
  if (missing.length > 0) {
    throw new InputError('column-missing', {
      what: `the table has no column ${missing.join(', ')}`,
      allowed: `a header line with ${all.join(', ')}`,
      got: header?.cells.join(',') ?? '',
      place: { file, row: header?.row ?? 1 },
    });
  }
  return {
    file,
    columns: new Set(at.keys()),
    units,
    comments,
    rows: body.map(({ row, cells }): TableRow<Column> => {
      return (column) => {
        const i = at.get(column);
        if (i === undefined) return { text: '', place: { file, row } };
        return { text: tidyText(cells[i] ?? ''), place: { file, row, column: i + 1 } };
      };
    }),
  };
}

/** What a comment line such as `# base: 12` states, and its place; undefined if none does. */
export function statedBy(
  { comments, file }: Pick<Table<string>, 'comments' | 'file'>,
  name: string,
): TableCell | undefined {
  for (const { row, text } of comments) {
    const [, key = '', value = ''] = /^([^:=]+)[:=](.*)$/u.exec(text) ?? [];
    if (tidyText(key).toLowerCase() === name) {
      return { text: tidyText(value), place: { file, row } };
    }
  }
  return undefined;
}

/** The unit that `# unit: cm` states. Throws InputError `unit-unknown`. */
export function statedUnit(
  table: Pick<Table<string>, 'comments' | 'file'>,
): LengthUnit | undefined {
  const stated = statedBy(table, 'unit');
  if (stated === undefined) return undefined;
  const unit = unitNamed(stated.text);
  if (unit !== undefined) return unit;
  throw new InputError('unit-unknown', {
    what: 'the file states an unknown unit',
    allowed: LENGTH_UNITS.join(', '),
    got: stated.text,
    place: stated.place,
  });
}

/**
 * 1 if y runs down, as in the engine's own files, or -1 for a file with the line `# y: up`. Throws
 * InputError `bad-option` for anything else.
 */
export function statedDown(table: Pick<Table<string>, 'comments' | 'file'>): 1 | -1 {
  const stated = statedBy(table, 'y');
  if (stated === undefined || /^down$/iu.test(stated.text)) return 1;
  if (/^up$/iu.test(stated.text)) return -1;
  throw new InputError('bad-option', {
    what: 'the file states an unknown direction of y',
    allowed: 'down or up',
    got: stated.text,
    place: stated.place,
  });
}

/** A cell as a length in mm, of either sign. Throws InputError `cell-missing` or `cell-not-a-number`. */
export function lengthCell({ text, place }: TableCell, unit: LengthUnit): number {
  const length = parseLength(text, unit);
  if (length !== undefined) return length;
  throw new InputError(text === '' ? 'cell-missing' : 'cell-not-a-number', {
    what: text === '' ? 'a length is missing' : 'a cell is not a length',
    allowed: 'a number such as -3.5 or 1 1/4, with its unit if it is another than the file has',
    got: excerpt(text),
    place,
  });
}
