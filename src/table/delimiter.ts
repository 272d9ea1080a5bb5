/** Which character parts the cells of a chart. */
import { isBlank } from './tidy-text';
import { recognizeMeasurement } from '../chart/vocabulary';

/** A character that spreadsheets put between cells. */
export type Delimiter = ',' | ';' | '\t';

/**
 * In the order they are believed when all else is equal: a tab is never part of a cell, and in a
 * file parted by semicolons the commas are decimal.
 */
const DELIMITERS: readonly Delimiter[] = ['\t', ';', ','];

/** Titles and notes come before a chart's own lines, but hardly more of them than this. */
const LINES_CONSIDERED = 200;

/**
 * The delimiter of a chart, found by trying each on the lines that have content. The most lines
 * with a known measurement among at least three cells win, then the most lines with three cells;
 * prose in title lines, with whatever marks are in it, has no say against that.
 */
export function findDelimiter(lines: readonly string[]): Delimiter {
  let best: Delimiter = ',';
  let bestScore = 0;
  for (const delimiter of DELIMITERS) {
    const score = lines
      .slice(0, LINES_CONSIDERED)
      .reduce((sum, line) => sum + lineScore(line.split(delimiter)), 0);
    if (score > bestScore) [best, bestScore] = [delimiter, score];
  }
  return best;
}

function lineScore(cells: readonly string[]): number {
  if (cells.length < 3 || cells.filter((cell) => !isBlank(cell)).length < 2) return 0;
  return cells.some((cell) => recognizeMeasurement(cell) !== undefined) ? LINES_CONSIDERED : 1;
}
