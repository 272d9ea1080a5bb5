/** How a list of bodies is laid out: one body a row, or one a column as in a chart. */
import type { ChartCell, ChartLine, ChartTable } from '../chart/layout';
import { findLayout } from '../chart/layout';
import { recognizeMeasurement } from '../chart/vocabulary';
import { labelKey } from '../table/label';
import type { SheetRecord } from '../table/sheet';
import { isBlank } from '../table/tidy-text';

/** Words above a column that tells bodies apart, by their letters and digits, those of a person first. */
const NAME_WORDS: readonly string[] = [
  ...['wearer', 'customer', 'client', 'person', 'body', 'bodies'],
  ...['order', 'orders', 'ordernumber', 'orderno', 'ordernr', 'label', 'id', 'number', 'no', 'nr'],
  ...['size', 'sizes'],
];

/**
 * The table of a list of bodies as that of a chart, with one measurement a line. One body a row is told
 * by a header with several measurements. Throws what `findLayout` throws.
 */
export function findBodies(records: readonly SheetRecord[], file: string): ChartTable {
  const header = headerIndex(records);
  return header < 0 ? findLayout(records, file) : bodyRows(records, header);
}

/** The headings below which a body may have cells; undefined for a body a column. */
export function headingsIn(records: readonly SheetRecord[]): SheetRecord | undefined {
  return records[headerIndex(records)];
}

/** A header among the bodies, by which those below it may be read otherwise. */
export function secondHeadings(
  records: readonly SheetRecord[],
  headings: SheetRecord,
): SheetRecord | undefined {
  return records.slice(records.indexOf(headings) + 1).find((record) => measurementsIn(record) > 1);
}

/** The first cell of a body that stands below no heading: of a number that its comma parted, or a column without a name. */
export function strayCell(
  record: SheetRecord,
  headings: SheetRecord,
  named: number | undefined,
): ChartCell | undefined {
  const column = record.cells.findIndex(
    (cell, i) => !isBlank(cell) && i !== named && isBlank(headings.cells[i] ?? ''),
  );
  return column < 0 ? undefined : cellAt(record, column);
}

/** The record that names two measurements or more, and the most; -1 if none does. */
function headerIndex(records: readonly SheetRecord[]): number {
  let [index, most] = [-1, 1];
  for (const [i, record] of records.entries()) {
    const count = measurementsIn(record);
    if (count > most) [index, most] = [i, count];
  }
  return index;
}

function measurementsIn({ cells }: SheetRecord): number {
  return new Set(cells.flatMap((cell) => recognizeMeasurement(cell)?.name ?? [])).size;
}

function bodyRows(records: readonly SheetRecord[], headerAt: number): ChartTable {
  const header = records[headerAt] ?? { row: 1, cells: [] };
  const body = records.slice(headerAt + 1);
  const named = nameColumn(header);
  return {
    layout: 'size-rows',
    beside: records.slice(0, headerAt),
    corner: cellAt(header, named ?? 0),
    sizes: body.map((record) => nameCell(record, named)),
    lines: measurementColumns(header, named).map((column): ChartLine => ({
      label: cellAt(header, column),
      cells: body.map((record) => cellAt(record, column)),
    })),
  };
}

/**
 * The column (from 0) with the names of the bodies: one that is called a name, whosever, else one that tells them
 * apart, else the first where it is no measurement; undefined for none.
 */
export function nameColumn({ cells }: SheetRecord): number | undefined {
  const keys = cells.map(labelKey);
  const name = keys.findIndex((key) =>
    /^(?:customers?|clients?|wearers?|persons?|full)?names?$/u.test(key),
  );
  if (name >= 0) return name;
  const called = NAME_WORDS.map((word) => keys.indexOf(word)).find((column) => column >= 0);
  if (called !== undefined) return called;
  return recognizeMeasurement(cells[0] ?? '') === undefined ? 0 : undefined;
}

/** The columns (from 0) of a header that have a heading and are not that of the names. */
export function measurementColumns(
  { cells }: SheetRecord,
  named: number | undefined,
): readonly number[] {
  return [...cells.keys()].filter((column) => column !== named && !isBlank(cells[column] ?? ''));
}

/** The name of a body, or a blank at the place of its row. */
function nameCell(record: SheetRecord, named: number | undefined): ChartCell {
  return named === undefined ? { text: '', row: record.row, column: 1 } : cellAt(record, named);
}

/** One cell of a record, its column from 0. */
export function cellAt({ row, cells }: SheetRecord, column: number): ChartCell {
  return { text: cells[column] ?? '', row, column: column + 1 };
}
