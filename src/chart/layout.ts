/** How the records of a chart are laid out: where its sizes, its measurements and its cells are. */
import { InputError } from '../errors';
import { isCornerLabel, namesSizes } from '../table/label';
import { findHeader } from './header';
import type { SheetRecord } from '../table/sheet';
import type { SizeChart } from './size-chart';
import { excerpt, isBlank, tidyText } from '../table/tidy-text';
import { nearMeasurement, recognizeMeasurement } from './vocabulary';
import { MOST_NEAR } from '../table/near-names';

/** One cell; rows and columns count from 1. The text is empty where the file has no cell. */
export interface ChartCell {
  readonly text: string;
  readonly row: number;
  readonly column: number;
}

/** `row 3, column 4`, for messages that name two cells. */
export function cellPosition({ row, column }: ChartCell): string {
  return `row ${row}, column ${column}`;
}

/** A chart with one measurement a line, whichever way its file is turned. */
export interface ChartTable {
  readonly layout: SizeChart['layout'];
  /** The records above the header, and those of words alone among the measurements. */
  readonly beside: readonly SheetRecord[];
  /** The cell before the sizes and above the measurements, or the other way around. */
  readonly corner: ChartCell;
  /** Labels of the sizes; blank where there are cells but no label. */
  readonly sizes: readonly ChartCell[];
  readonly lines: readonly ChartLine[];
}

/** The label of a measurement and its cells, one a size. */
export interface ChartLine {
  readonly label: ChartCell;
  readonly cells: readonly ChartCell[];
}

/** A header with points is that of a pattern or of a rule sheet. */
function isOfPoints(records: readonly SheetRecord[]): boolean {
  return records.some(({ cells }) => cells.some((cell) => /^points?$/iu.test(tidyText(cell))));
}

/**
 * Finds the layout by where the known measurements stand: below each other, or side by side.
 * Throws `measurement-missing` if there are none, and `chart-no-header` if the line or column of
 * the size names cannot be told.
 */
export function findLayout(records: readonly SheetRecord[], file: string): ChartTable {
  const known = findKnown(records);
  const column = fullest(known.byColumn);
  const row = fullest(known.byRow);
  if (column === undefined || row === undefined) {
    throw new InputError('measurement-missing', {
      what: isOfPoints(records)
        ? 'the file is a pattern or a rule sheet, with points, and no chart of body measurements'
        : `the chart has no measurement that is known${meantIn(records)}`,
      allowed: 'rows waist_girth and hip_girth, and others by their usual names',
      got: firstLabels(records),
      place: { file },
    });
  }
  const header = records[row.index];
  const sideBySide =
    row.count > column.count ||
    (row.count === column.count && header?.cells.some(namesSizes) === true);
  return sideBySide
    ? sizeRows(records, row.index, file)
    : measurementRows(records, column.index, file);
}

function measurementRows(
  records: readonly SheetRecord[],
  labels: number,
  file: string,
): ChartTable {
  const headerIndex = findHeader(records, labels, file);
  const header = records[headerIndex];
  const below = records.slice(headerIndex + 1);
  const words = below.filter(isWords);
  const body = below.filter((record) => !words.includes(record));
  refuseSecondHeader(header, body, { labels, file });
  const columns = range(labels + 1, width(records));
  const used = columns.filter((column) =>
    [header, ...body].some((record) => !isBlank(cellOf(record, column).text)),
  );
  return {
    layout: 'measurement-rows',
    beside: [...records.slice(0, headerIndex), ...words],
    corner: cellOf(header, labels),
    sizes: used.map((column) => cellOf(header, column)),
    lines: body.map((record) => ({
      label: cellOf(record, labels),
      cells: used.map((column) => cellOf(record, column)),
    })),
  };
}

/**
 * Throws `chart-no-header` for a line that names other sizes with measurements above and below it: those below
 * belong to them. Above or below all measurements it may be the sizes of another country.
 */
function refuseSecondHeader(
  header: SheetRecord | undefined,
  body: readonly SheetRecord[],
  { labels, file }: { readonly labels: number; readonly file: string },
): void {
  const isKnown = ({ cells }: SheetRecord): boolean =>
    recognizeMeasurement(cells[labels] ?? '') !== undefined;
  const sizesIn = (record: SheetRecord | undefined): string =>
    (record?.cells ?? [])
      .slice(labels + 1)
      .map(tidyText)
      .join('\n')
      .trim();
  const between = body.slice(body.findIndex(isKnown), body.findLastIndex(isKnown));
  const second = between.find((record) => {
    const corner = record.cells[labels] ?? '';
    return (
      (isBlank(corner) || isCornerLabel(corner)) &&
      sizesIn(record) !== '' &&
      sizesIn(record) !== sizesIn(header)
    );
  });
  if (second === undefined) return;
  throw new InputError('chart-no-header', {
    what: 'a second line among the measurements seems to name sizes',
    allowed: 'one table a file, with one line that names its sizes',
    got: excerpt(second.cells.join(', ')),
    place: { file, row: second.row },
  });
}

/** One cell of prose, as `GIRTHS` or `all of them in half`: what it says counts for the table, and is no row of it. */
function isWords({ cells }: SheetRecord): boolean {
  const [text = '', ...others] = cells.filter((cell) => !isBlank(cell));
  return others.length === 0 && /\p{L}/u.test(text) && recognizeMeasurement(text) === undefined;
}

function sizeRows(records: readonly SheetRecord[], headerIndex: number, file: string): ChartTable {
  const header = records[headerIndex];
  const body = records.slice(headerIndex + 1);
  const columns = range(0, width(records)).filter((column) =>
    [header, ...body].some((record) => !isBlank(cellOf(record, column).text)),
  );
  const sizes = columns.find((column) => namesSizes(cellOf(header, column).text)) ?? columns[0];
  if (sizes === undefined || recognizeMeasurement(cellOf(header, sizes).text) !== undefined) {
    throw new InputError('chart-no-header', {
      what: 'the chart has one size a row, but no column with the names of the sizes',
      allowed: 'a column called `size`, or the names of the sizes in the first column',
      got: excerpt(header?.cells.join(', ') ?? ''),
      place: { file, row: header?.row ?? 1 },
    });
  }
  return {
    layout: 'size-rows',
    beside: records.slice(0, headerIndex),
    corner: cellOf(header, sizes),
    sizes: body.map((record) => cellOf(record, sizes)),
    lines: columns
      .filter((column) => column !== sizes)
      .map((column) => ({
        label: cellOf(header, column),
        cells: body.map((record) => cellOf(record, column)),
      })),
  };
}

/** Which measurements labels may be meant for, for a message. */
function meantIn(records: readonly SheetRecord[]): string {
  const labels = new Set(records.flatMap(({ cells }) => cells.map(tidyText)));
  return [...labels]
    .flatMap((label) => {
      const name = isCornerLabel(label) ? undefined : nearMeasurement(label);
      return name === undefined ? [] : [`; "${excerpt(label)}" may be meant for ${name}`];
    })
    .slice(0, MOST_NEAR)
    .join('');
}

/** What stands where measurements are looked for, for a message. */
function firstLabels(records: readonly SheetRecord[]): string {
  const labels = records.map(({ cells }) => cells.find((cell) => !isBlank(cell)) ?? '');
  return labels.slice(0, 8).map(excerpt).join(', ');
}

/** The different known measurements in each row and in each column. */
function findKnown(records: readonly SheetRecord[]) {
  const byRow = new Map<number, Set<string>>();
  const byColumn = new Map<number, Set<string>>();
  for (const [row, { cells }] of records.entries()) {
    for (const [column, cell] of cells.entries()) {
      const name = recognizeMeasurement(cell)?.name;
      if (name === undefined) continue;
      byRow.set(row, (byRow.get(row) ?? new Set()).add(name));
      byColumn.set(column, (byColumn.get(column) ?? new Set()).add(name));
    }
  }
  return { byRow, byColumn };
}

function fullest(sets: ReadonlyMap<number, ReadonlySet<string>>) {
  let found: { index: number; count: number } | undefined;
  for (const [index, { size }] of sets) {
    if (found === undefined || size > found.count) found = { index, count: size };
  }
  return found;
}

function cellOf(record: SheetRecord | undefined, column: number): ChartCell {
  return { text: record?.cells[column] ?? '', row: record?.row ?? 1, column: column + 1 };
}

/** Cells in the longest record. */
function width(records: readonly SheetRecord[]): number {
  return records.reduce((most, { cells }) => Math.max(most, cells.length), 0);
}

function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(0, to - from) }, (_, index) => from + index);
}
