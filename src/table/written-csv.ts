/** Rows of cells as CSV text, as RFC 4180 has it but with plain line feeds. */
import { parse } from 'csv-parse/sync';
import { stringify } from 'csv-stringify/sync';
import { InputError } from '../errors';
import { withoutTextMark, writtenCell } from './written-cell';

/** Readers take blanks at the ends of a cell away unless it is quoted, and lone returns end a line. */
const QUOTED = [/^\s|\s$/u, /\r/u];
/** What stands in cells that are quoted; most tables have none. */
const NEEDS_QUOTES = /^\s|\s$|[",\r\n]/u;

/** Each row on a line of its own; what a spreadsheet program would calculate is marked as text. */
export function writtenCsv(rows: readonly (readonly (string | undefined)[])[]): string {
  const cells = rows.map((row) => row.map((cell) => writtenCell(cell ?? '')));
  if (cells.some((row) => row.some((cell) => NEEDS_QUOTES.test(cell))))
    return stringify(cells, { quoted_match: QUOTED });
  return cells.map((row) => `${row.join(',')}\n`).join('');
}

/** The rows of such a text below its first, by the names in the first. Throws InputError `csv-malformed`. */
export function readWrittenCsv(text: string, file: string): Record<string, string>[] {
  try {
    // Told to cast cells or to name them, the parser describes each cell anew, which takes most of its time.
    const rows: string[][] = parse(text, { relax_column_count: true });
    const [names = [], ...cells] = rows.map((row) => row.map(withoutTextMark));
    return cells.map((row) => Object.fromEntries(row.map((cell, i) => [names[i] ?? i, cell])));
  } catch (error) {
    throw new InputError('csv-malformed', {
      what: 'the file is not as it was written',
      allowed: 'a table as the engine writes it',
      got: error instanceof Error ? error.message : String(error),
      place: { file },
    });
  }
}
