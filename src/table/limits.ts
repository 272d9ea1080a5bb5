/** How much a table of text may hold: far more than any skirt needs, and read at once. */
import type { Place } from '../errors';
import { InputError } from '../errors';
import { UNSEEN, printable } from './characters';

/** Lines with and without content. The engine's own figure. */
const MOST_LINES = 250_000;
/** Characters of a line: ten thousand cells of twenty characters. The engine's own figure. */
const LONGEST_LINE = 200_000;
/** Cells of a file: 80,000 points with 6 cells each. The engine's own figure. */
export const MOST_CELLS = 500_000;
/** Characters of a cell: a long note, twice the longest formula. The engine's own figure. */
const LONGEST_CELL = 2_000;

/** Delimiters and blanks; a line of nothing else holds no cells. */
const NO_CELL = new Set([...'", ;\t'].map((character) => character.charCodeAt(0)));
const DELIMITERS = new Set([...',;\t'].map((character) => character.charCodeAt(0)));
const [LINE_FEED, CARRIAGE_RETURN] = [10, 13];

/**
 * The lines of a text, of any line ends. Throws InputError `file-too-large` where there are too many
 * of them, or one is too long or has too many cells.
 */
export function boundedLines(text: string, file: string, mostCells: number): readonly string[] {
  let [row, start, cells] = [1, 0, 0];
  let [delimiters, hasContent] = [0, false];
  for (let i = 0; i <= text.length; i++) {
    const code = i < text.length ? text.charCodeAt(i) : LINE_FEED;
    if (code !== LINE_FEED && code !== CARRIAGE_RETURN) {
      if (DELIMITERS.has(code)) delimiters++;
      else if (!hasContent && !NO_CELL.has(code)) hasContent = true;
      continue;
    }
    if (hasContent) cells += delimiters + 1;
    const place = { file, row };
    if (i - start > LONGEST_LINE) tooLarge('a line', LONGEST_LINE, 'characters', i - start, place);
    if (cells > mostCells) tooLarge('the file', mostCells, 'cells', cells, place);
    if (row > MOST_LINES) tooLarge('the file', MOST_LINES, 'lines', row, place);
    // Of the two characters of one line end the second counts.
    if (code === LINE_FEED || text.charCodeAt(i + 1) !== LINE_FEED) row++;
    [start, delimiters, hasContent] = [i + 1, 0, false];
  }
  return text.split(/\r\n|\r|\n/u);
}

/** Lines of a drawing or of its rule table, two for every figure. The engine's own figure. */
const MOST_DRAWN_LINES = 1_000_000;

/** The lines of a drawing, of any line ends. Throws InputError `file-too-large`. */
export function drawnLines(text: string, file: string): readonly string[] {
  let lines = 1;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code !== LINE_FEED && code !== CARRIAGE_RETURN) continue;
    if (code === CARRIAGE_RETURN && text.charCodeAt(i + 1) === LINE_FEED) continue;
    if (++lines > MOST_DRAWN_LINES + 1)
      tooLarge('the file', MOST_DRAWN_LINES, 'lines', lines - 1, { file, row: lines - 1 });
  }
  return text.split(/\r\n|\r|\n/u);
}

function tooLarge(what: string, most: number, unit: string, got: number, place: Place): never {
  throw new InputError('file-too-large', {
    what: `${what} has too many ${unit}`,
    allowed: `${most} ${unit}`,
    got: `${got} or more`,
    place,
  });
}

/** Checks the cells of a row, each at its place, as `checkCell` does. */
export function checkCells(cells: readonly string[], file: string, row: number): void {
  for (const [index, cell] of cells.entries()) checkCell(cell, { file, row, column: index + 1 });
}

/**
 * Throws InputError `file-too-large` for a cell that is too long, and `character-unseen` for one with a control or
 * bidirectional character.
 */
export function checkCell(cell: string, place: Place): void {
  if (cell.length > LONGEST_CELL)
    tooLarge('a cell', LONGEST_CELL, 'characters', cell.length, place);
  checkCharacters(cell, 'a cell', place);
}

/** Whether `checkCell` refuses no cell of a line, for all that can be seen of the line as a whole. */
export function hasPlainCells(line: string): boolean {
  return line.length <= LONGEST_CELL && !UNSEEN.test(line);
}

/** Throws InputError `character-unseen` for a text with a control or bidirectional character. */
export function checkCharacters(text: string, what: string, place: Place): void {
  const unseen = UNSEEN.exec(text)?.[0];
  if (unseen === undefined) return;
  throw new InputError('character-unseen', {
    what: `${what} has a control or bidirectional character`,
    allowed: 'letters, digits and signs that can be seen',
    got: printable(unseen),
    place,
  });
}
