/** Which character parts the cells of a typed text. */
import { isBlank } from './tidy-text';

/** A character that spreadsheets put between cells. */
export type Delimiter = ',' | ';' | '\t';

/** Whether a line, parted into cells, is one that only this kind of file can have. */
export type TellingLine = (cells: readonly string[]) => boolean;

/**
 * In the order they are believed when all else is equal: a tab is never part of a cell, and in a
 * file parted by semicolons the commas are decimal.
 */
const DELIMITERS: readonly Delimiter[] = ['\t', ';', ','];

/** Titles and notes come before a table's own lines, but hardly more of them than this. */
const LINES_CONSIDERED = 200;

/**
 * The delimiter of a text, found by trying each on the lines that have content. The most telling
 * lines win, then the most lines with three cells; prose in title lines, with whatever marks are in
 * it, has no say against that.
 */
export function findDelimiter(lines: readonly string[], tells: TellingLine): Delimiter {
  let best: Delimiter = ',';
  let bestScore = 0;
  for (const delimiter of DELIMITERS) {
    const score = lines
      .slice(0, LINES_CONSIDERED)
      .reduce((sum, line) => sum + lineScore(line.split(delimiter), tells), 0);
    if (score > bestScore) [best, bestScore] = [delimiter, score];
  }
  return best;
}

function lineScore(cells: readonly string[], tells: TellingLine): number {
  if (cells.filter((cell) => !isBlank(cell)).length < 2) return 0;
  if (tells(cells)) return LINES_CONSIDERED;
  return cells.length < 3 ? 0 : 1;
}
