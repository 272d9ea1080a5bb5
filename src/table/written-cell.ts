/** Text cells that a spreadsheet program would take for formulas, and the mark that keeps them text. */
import { parseNumberCell } from './number-cell';

/** A text that begins so is calculated when the file is opened, whatever it does then. */
const FORMULA = /^'*[=+\-@]/u;
/** What is written most often of what begins so. */
const NEGATIVE = /^-\d+(?:\.\d+)?$/u;
/** The mark by which spreadsheet programs are told that a cell is text. */
const TEXT_MARK = "'";

/** A cell as it is written: with the mark where it would be calculated and is no plain number. */
export function writtenCell(text: string): string {
  if (!FORMULA.test(text) || NEGATIVE.test(text)) return text;
  return parseNumberCell(text).kind === 'number' ? text : TEXT_MARK + text;
}

/** The text of a cell as it was meant, without the mark. */
export function withoutTextMark(cell: string): string {
  return cell.startsWith(TEXT_MARK) && FORMULA.test(cell) ? cell.slice(1) : cell;
}
