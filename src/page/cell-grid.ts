/** A table as the cells in which it was typed, with its places in the file, to be edited cell by cell. */
import { InputError } from '../errors';
import type { TellingLine } from '../table/delimiter';
import { readSheet } from '../table/sheet';
import { writtenCsv } from '../table/written-csv';

/** Rows of cells; all rows are as long as the longest. */
export interface CellGrid {
  /** The lines that begin with `#`, without it. */
  readonly comments: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** The row in the file of each row, from 1. */
  readonly fileRows: readonly number[];
}

/**
 * Cells of a pasted or dropped text that is a table in any of the usual forms; `tells` knows the lines that
 * only such a table has. None of a text that is no table.
 */
export function gridOf(text: string, file: string, tells: TellingLine): CellGrid | undefined {
  try {
    const { records, comments } = readSheet(text, file, tells);
    if (records.length === 0) return undefined;
    return {
      comments: comments.map((comment) => comment.text),
      rows: asLong(records.map(({ cells }) => cells)),
      fileRows: records.map(({ row }) => row),
    };
  } catch (error) {
    if (error instanceof InputError) return undefined;
    throw error;
  }
}

/** The grid as CSV with its comments above. */
export function gridText({ comments, rows }: Pick<CellGrid, 'comments' | 'rows'>): string {
  return comments.map((text) => `# ${text}`.trimEnd() + '\n').join('') + writtenCsv(rows);
}

/** The grid with its places in its own text, where rows stand that are blank as yet too. */
export function asWritten(grid: CellGrid): CellGrid {
  let next = grid.comments.length + 1;
  const fileRows = grid.rows.map((line) => {
    const own = next;
    next += line.join('').split('\n').length;
    return own;
  });
  return { ...grid, fileRows };
}

/** With cells put in from a place on; rows and columns are added for those that find none. */
export function withCells(
  grid: CellGrid,
  row: number,
  column: number,
  cells: readonly (readonly string[])[],
): CellGrid {
  const rows = grid.rows.map((line) => [...line]);
  cells.forEach((line, i) => {
    const target = (rows[row + i] ??= []);
    line.forEach((cell, k) => {
      while (target.length < column + k) target.push('');
      target[column + k] = cell;
    });
  });
  return { ...grid, rows: asLong(rows) };
}

/** With an empty column before the place `column`, under a heading. */
export function withColumn(grid: CellGrid, column: number, heading: string): CellGrid {
  const rows = grid.rows.map((line, i) => line.toSpliced(column, 0, i === 0 ? heading : ''));
  return { ...grid, rows };
}

/** Without one column. */
export function withoutColumn(grid: CellGrid, column: number): CellGrid {
  return { ...grid, rows: grid.rows.map((line) => line.toSpliced(column, 1)) };
}

/** With one more row, named and otherwise blank. */
export function withRow(grid: CellGrid, label: string): CellGrid {
  return { ...grid, rows: asLong([...grid.rows, [label]]) };
}

/** Without one row. */
export function withoutRow(grid: CellGrid, row: number): CellGrid {
  return { ...grid, rows: grid.rows.toSpliced(row, 1) };
}

/** The cells of a text that a spreadsheet put on the clipboard: tabs between cells, a row a line. */
export function pastedCells(text: string): readonly (readonly string[])[] {
  return text
    .replace(/\r\n?/gu, '\n')
    .replace(/\n$/u, '')
    .split('\n')
    .map((line) => line.split('\t').map((cell) => cell.trim()));
}

function asLong(rows: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const length = Math.max(0, ...rows.map((line) => line.length));
  return rows.map((line) => [...line, ...Array<string>(length - line.length).fill('')]);
}
