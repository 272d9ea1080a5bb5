/** Rows of cells as CSV text, as RFC 4180 has it but with plain line feeds. */
import { writtenCell } from './written-cell';

/** What a cell is quoted for; readers take blanks at its ends away unless they are. */
const QUOTED = /[",\r\n]|^\s|\s$/u;

/** Each row on a line of its own; what a spreadsheet program would calculate is marked as text. */
export function writtenCsv(rows: readonly (readonly (string | undefined)[])[]): string {
  let csv = '';
  for (const row of rows)
    csv += `${row.map((cell) => quoted(writtenCell(cell ?? ''))).join(',')}\n`;
  return csv;
}

function quoted(cell: string): string {
  return QUOTED.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
