/** Rows of cells as CSV text, as RFC 4180 has it but with plain line feeds. */
import { stringify } from 'csv-stringify/sync';
import { writtenCell } from './written-cell';

/** Readers take blanks at the ends of a cell away unless it is quoted, and lone returns end a line. */
const QUOTED = [/^\s|\s$/u, /\r/u];

/** Each row on a line of its own; what a spreadsheet program would calculate is marked as text. */
export function writtenCsv(rows: readonly (readonly (string | undefined)[])[]): string {
  return stringify(
    rows.map((row) => row.map((cell) => writtenCell(cell ?? ''))),
    { quoted_match: QUOTED },
  );
}
