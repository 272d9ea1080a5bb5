/** A list of bodies that is read part by part: its header once, then its rows, a line each. */
import { isPlausible } from '../chart/plausible';
import { namesMeasurement } from '../chart/measurement-table';
import type { MeasurementRow, SizeChart } from '../chart/size-chart';
import { recognizeMeasurement } from '../chart/vocabulary';
import { InputError } from '../errors';
import { findDelimiter } from '../table/delimiter';
import { saidLine } from '../table/said-line';
import type { Delimiter } from '../table/delimiter';
import { hasPlainCells } from '../table/limits';
import { cellsOf } from '../table/line-cells';
import { refuseOtherFile } from '../table/other-file';
import type { SheetRecord } from '../table/sheet';
import { namesNone } from '../table/size-label';
import { tidyText } from '../table/tidy-text';
import { toMillimeters } from '../units';
import type { BodyColumns, BodyEntry } from './body-list';
import { bodyChart, placeName, readBodyList, refuseHeader } from './body-list';
import { refuseRemark } from './no-body';
import { cellAt, measurementColumns, nameColumn, strayCell } from './body-table';

/** What is known of a list once its header is read. */
export interface StreamedList {
  readonly columns: BodyColumns;
  readonly delimiter: Delimiter;
  /** The column (from 0) of each of the columns. */
  readonly at: readonly number[];
  /** The header, and its column (from 0) of names. */
  readonly headings: SheetRecord;
  readonly named: number | undefined;
  /** The row of the header, counted from 1. */
  readonly headerRow: number;
}

/**
 * Reads the beginning of a list, `head`, as far as its header; what follows in it is left. Throws
 * InputError as `readBodyList` does, and `chart-no-header` for a list with a body a column, which cannot be
 * read part by part.
 */
export function readStreamedList(head: string, file: string): StreamedList {
  refuseOtherFile(head, file);
  const lines = head.split('\n');
  const delimiter = findDelimiter(lines, namesMeasurement);
  const headerAt = lines.findIndex((line) => isHeader(line, delimiter));
  for (const [i, line] of lines.slice(0, Math.max(headerAt, 0) + 1).entries())
    refuseReturn(line, file, i + 1);
  if (headerAt < 0) {
    throw new InputError('chart-no-header', {
      what: 'a list that is read part by part has one body a row, below a header',
      allowed: 'a header such as `name,waist_girth,hip_girth` and a row for each body',
      place: { file },
    });
  }
  const columns = readBodyList(lines.slice(0, headerAt + 1).join('\n'), file);
  const header = { row: headerAt + 1, cells: cellsOf(lines[headerAt] ?? '', delimiter) };
  const named = nameColumn(header);
  const at = measurementColumns(header, named);
  return {
    columns,
    delimiter,
    headings: header,
    named,
    at: columns.columns.map((_, i) => at[i] ?? -1),
    headerRow: headerAt + 1,
  };
}

function isHeader(line: string, delimiter: Delimiter): boolean {
  return !line.trimStart().startsWith('#') && measurementsIn(line, delimiter) > 1;
}

function measurementsIn(line: string, delimiter: Delimiter): number {
  const names = cellsOf(line, delimiter).flatMap((cell) => recognizeMeasurement(cell)?.name ?? []);
  return new Set(names).size;
}

/** How a remark begins; a spreadsheet puts one between quotes that has commas. */
const REMARK = /^[\s,;"]*#+/u;

/** A number without any doubt: what nearly every cell of a long list is. */
const PLAIN = /^\s*\d{1,4}(?:\.\d{1,2})?\s*$/u;

/**
 * The body of one line, the row of which is `row`. Gives undefined for a line without a body, and the entry
 * with a chart that is read when it is asked for: it throws InputError as `bodyChart` does, and
 * `cell-not-a-number` for a comment, which says nothing below the header of a list that is read in parts.
 */
export function bodyOfLine(
  { columns, delimiter, at, headings, named }: StreamedList,
  line: string,
  row: number,
): { readonly entry: BodyEntry; readonly chart: () => SizeChart } | undefined {
  if (/^[\s,;"#]*$/u.test(line) || /^[\s,;"]*#\s*not read\b/iu.test(line)) return undefined;
  refuseReturn(line, columns.file, row);
  const record = { row, cells: cellsOf(line, delimiter) };
  if (record.cells.some((cell) => /^\s*"/u.test(cell))) refuseOpenQuote(columns, row);
  const entry: BodyEntry = {
    number: row,
    // It is written nowhere: bodies are told by their rows.
    name: tidyText(named === undefined ? '' : (record.cells[named] ?? '')),
    cells: at.map((column) => cellAt(record, column)),
    stray: strayCell(record, headings, named),
  };
  if (REMARK.test(line)) return { entry, chart: () => refuseComment(columns, line, row) };
  return {
    entry,
    chart: () => {
      const plain = hasPlainCells(line) ? plainChart(columns, entry) : undefined;
      if (plain !== undefined) return plain;
      if (isHeader(line, delimiter)) refuseHeader(columns.file, row);
      return bodyChart(columns, entry);
    },
  };
}

/** Throws InputError `csv-malformed` for a carriage return within a line, which elsewhere ends it. */
function refuseReturn(line: string, file: string, row: number): void {
  const at = line.indexOf('\r');
  if (at < 0 || at === line.length - 1) return;
  throw new InputError('csv-malformed', {
    what: 'a line ends with a carriage return alone, where a list is read part by part',
    allowed: 'a list saved as CSV in UTF-8, whose lines end with a line feed',
    place: { file, row },
  });
}

function refuseOpenQuote({ file }: BodyColumns, row: number): never {
  throw new InputError('csv-malformed', {
    what: 'a quote is opened and not closed in its line',
    allowed: 'a line for each body in a list that is read part by part',
    place: { file, row },
  });
}

function refuseComment(columns: BodyColumns, line: string, row: number): never {
  const { file } = columns;
  const said = saidLine(line.replace(REMARK, ''), { file, row });
  if (said.parts.some(({ name }) => name !== undefined))
    throw new InputError('unit-contradicted', {
      what: 'a line among the bodies states something of those below it',
      allowed: 'what holds for all bodies above the header',
      place: { file, row },
    });
  refuseRemark(columns, row);
}

/** The same chart as `bodyChart`, where every known cell is a plain number of an adult; else undefined. */
function plainChart(columns: BodyColumns, entry: BodyEntry): SizeChart | undefined {
  const { file, comments, unit } = columns;
  if (entry.stray !== undefined || namesNone(entry.name)) return undefined;
  const rows: MeasurementRow[] = [];
  for (const [i, { name, known, label }] of columns.columns.entries()) {
    const cell = entry.cells[i];
    if (cell === undefined || !known || !PLAIN.test(cell.text)) return undefined;
    const mm = toMillimeters(Number(cell.text), unit);
    if (!isPlausible(name, mm)) return undefined;
    rows.push({
      ...{ name, known, label: tidyText(label.text), values: [mm], cells: [cell.text] },
      places: [cell],
    });
  }
  return {
    ...{ file, comments, unit, rows, largestFirst: false, layout: 'measurement-rows' },
    sizes: [placeName(columns, entry)],
  };
}
