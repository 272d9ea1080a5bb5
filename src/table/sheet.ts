/** The text of a CSV file as records of cells that still know their row, and its comments. */
import { CsvError, parse } from 'csv-parse/sync';
import { InputError } from '../errors';
import { MOST_CELLS, boundedLines, checkCells, checkCharacters } from './limits';
import { refuseOtherFile } from './other-file';
import type { SaidLine } from './said-line';
import { saidLine } from './said-line';
import type { TellingLine } from './delimiter';
import { findDelimiter } from './delimiter';
import { isBlank, tidyText } from './tidy-text';
import { withoutTextMark } from './written-cell';

/** A record with at least one cell that is not blank. Rows count from 1 in the file. */
export interface SheetRecord {
  readonly row: number;
  readonly cells: readonly string[];
}

/** A file of cells without any meaning yet. */
export interface Sheet {
  readonly records: readonly SheetRecord[];
  /** Lines that begin with `#`, above and among the records. */
  readonly comments: readonly SaidLine[];
}

interface Line {
  readonly row: number;
  readonly text: string;
}

const COMMENT = /^\s*#/u;
/** A spreadsheet appends delimiters to a comment line when it saves the file. */
const APPENDED = /[,;\s]/u;
/** Blanks and delimiters are all there is. Such lines can be thousands below a chart. */
const NO_CONTENT = /^(?:[\s,;]|"")*$/u;
/** A first line by which some spreadsheets announce the delimiter. */
const ANNOUNCED = /^sep=([,;\t])$/iu;

/** Throws InputError for cells of a row that cannot be used. */
export type CheckCells = (cells: readonly string[], file: string, row: number) => void;

/**
 * Reads CSV text with any of the usual delimiters and line ends; `tells` knows the lines by which
 * the delimiter is found. Throws `csv-malformed` with the row in which a quoted cell begins that
 * does not end as it should and for a file that is no text of cells, `file-too-large` beyond the bounds of a
 * table, `character-unseen` for a comment, and what `check` throws.
 */
export function readSheet(
  text: string,
  file: string,
  tells: TellingLine,
  mostCells = MOST_CELLS,
  check: CheckCells = checkCells,
): Sheet {
  refuseOtherFile(text, file);
  const comments: SaidLine[] = [];
  const lines: Line[] = [];
  for (const [index, line] of boundedLines(
    text.replace(/^\uFEFF/u, ''),
    file,
    mostCells,
  ).entries()) {
    const row = index + 1;
    if (COMMENT.test(line)) {
      const text = withoutMark(line);
      checkCharacters(text, 'a comment', { file, row });
      comments.push(saidLine(text, { file, row }));
    } else if (!NO_CONTENT.test(line)) lines.push({ row, text: line });
  }

  const records: SheetRecord[] = [];
  for (const { row, cells: typed } of parseLines(lines, file, tells)) {
    const record = { row, cells: typed.map(withoutTextMark) };
    check(record.cells, file, record.row);
    const cells = record.cells.filter((cell) => !isBlank(cell));
    // A spreadsheet quotes a comment that has delimiters in it, which hid its `#` above.
    if (cells[0]?.startsWith('#')) {
      comments.push(saidLine(withoutMark(cells.join(', ')), { file, row: record.row }));
    } else if (cells.length > 0) {
      records.push(record);
    }
  }
  return { records, comments: comments.sort((a, b) => a.place.row - b.place.row) };
}

function withoutMark(comment: string): string {
  let end = comment.length;
  while (end > 0 && APPENDED.test(comment.charAt(end - 1))) end--;
  return tidyText(comment.slice(0, end).replace(COMMENT, ''));
}

function parseLines(lines: readonly Line[], file: string, tells: TellingLine): SheetRecord[] {
  const announced = ANNOUNCED.exec(lines[0]?.text ?? '')?.[1];
  const content = announced === undefined ? lines : lines.slice(1);
  const texts = content.map((line) => line.text);
  const csv = texts.join('\n');

  const records: SheetRecord[] = [];
  const keep = (cells: string[], last: number) => {
    const linesWithin = cells.join('').split('\n').length - 1;
    records.push({ row: content[last - 1 - linesWithin]?.row ?? 1, cells });
  };
  try {
    parse(csv, {
      delimiter: announced ?? findDelimiter(texts, tells),
      relax_column_count: true,
      // The inch mark behind a number is no quote.
      relax_quotes: true,
      trim: true,
      on_record: (cells: string[], { lines: last }) => {
        keep(cells, last);
        return null;
      },
    });
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const before = new TextDecoder().decode(
      new TextEncoder().encode(csv).subarray(0, Number(error.bytes)),
    );
    throw new InputError('csv-malformed', {
      what: 'a quoted cell does not end with a quote',
      allowed: 'cells as they are, or between two double quotes',
      got: error.message,
      place: { file, row: content[before.split('\n').length - 1]?.row ?? 1 },
    });
  }
  return records;
}
