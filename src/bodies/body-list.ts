/** A list of bodies as read: each is a chart of one size, or is set aside. */
import type { ChartCell, ChartTable } from '../chart/layout';
import type { MeasurementLine } from '../chart/measurement-lines';
import { measurementRow } from '../chart/measurement-lines';
import { readMeasurementTable } from '../chart/measurement-table';
import { needRows } from '../chart/need-values';
import type { SizeChart } from '../chart/size-chart';
import { NEEDED } from '../chart/vocabulary';
import type { Place } from '../errors';
import { InputError, readEach } from '../errors';
import { needValues } from '../chart/need-values';
import { WALKING_ROWS } from '../stride/walker';
import { namesSizes } from '../table/label';
import { MOST_CELLS, checkCell, checkCells } from '../table/limits';
import type { SaidLine } from '../table/said-line';
import type { SheetRecord } from '../table/sheet';
import { excerpt, tidyText } from '../table/tidy-text';
import type { LengthUnit } from '../units';
import { findBodies, headingsIn, nameColumn, secondHeadings, strayCell } from './body-table';
import { checkBody } from './check-body';
import { refuseNoBody, refuseRemark } from './no-body';

/** What all bodies of a list have in common. */
export interface BodyColumns {
  readonly file: string;
  /** Comment and title lines. */
  readonly comments: readonly SaidLine[];
  readonly unit: LengthUnit;
  readonly layout: SizeChart['layout'];
  /** Whether its bodies are called by sizes and not by names. */
  readonly ofSizes: boolean;
  readonly columns: readonly Pick<MeasurementLine, 'name' | 'known' | 'unit' | 'label'>[];
}

/** One body before its cells are read. */
export interface BodyEntry {
  /** Where it stands in the file (from 1): its row, or where each body has a column its column. */
  readonly number: number;
  /** As typed, without blanks around it; empty for none. */
  readonly name: string;
  /** One for each of the columns. */
  readonly cells: readonly ChartCell[];
  /** A cell of its row that stands below no heading. */
  readonly stray?: ChartCell | undefined;
  /** Whether its line begins as a remark does, as one with an order `#1001` for a name. */
  readonly isRemark?: boolean;
}

/** A list of bodies in the order of its file. */
export interface BodyList extends BodyColumns {
  readonly entries: readonly BodyEntry[];
}

/**
 * Reads a list of bodies in either layout. Throws InputError where the list as a whole cannot be used,
 * as `readChart` does; what is wrong with one body is told by `bodyChart`.
 */
export function readBodyList(text: string, file: string): BodyList {
  let strays: ReadonlyMap<number, ChartCell> = new Map();
  const { table, lines, unit, comments } = readMeasurementTable(text, file, {
    layoutOf: (records) => {
      strays = straysIn(records, file);
      const found = withoutGot(() => findBodies(records, file));
      checkAround(found, file);
      return found;
    },
    // A body whose cells cannot be used is set aside by itself.
    check: () => undefined,
    mostCells: MOST_CELLS,
    name: 'list of bodies',
    header: 'a header such as `name,waist_girth,hip_girth` and a row for each body',
  });
  const columns: BodyColumns = {
    ...{ file, unit, layout: table.layout, columns: lines, comments },
    ofSizes: namesSizes(tidyText(table.corner.text)),
  };
  refuseMissing(columns);
  const entries = entriesOf(table, lines);
  if (table.layout !== 'size-rows') return { ...columns, entries };
  const remarks = comments.filter((line) => seemsBody(line, table.corner.row));
  const all = [
    ...entries.map((entry) => ({ ...entry, stray: strays.get(entry.number) })),
    ...remarks.map(({ place: { row } }) => ({ number: row, name: '', cells: [], isRemark: true })),
  ];
  return {
    ...{ ...columns, comments: comments.filter((line) => !remarks.includes(line)) },
    entries: all.toSorted((a, b) => a.number - b.number),
  };
}

/** Whether a remark below the header has numbers in its cells: it is somebody whom the list would lose. */
function seemsBody({ text, parts, place }: SaidLine, headerRow: number): boolean {
  if (place.row <= headerRow || parts.some(({ name }) => name !== undefined)) return false;
  return text.split(/[,;\t]/u).filter((cell) => /^\s*"?\d[\d.]*"?\s*$/u.test(cell)).length > 1;
}

/** By their rows; none of a list with a body a column. Throws InputError `measurement-twice` for a second header. */
function straysIn(records: readonly SheetRecord[], file: string): ReadonlyMap<number, ChartCell> {
  const headings = headingsIn(records);
  if (headings === undefined) return new Map();
  const second = secondHeadings(records, headings);
  if (second !== undefined) refuseHeader(file, second.row);
  const named = nameColumn(headings);
  const below = records.slice(records.indexOf(headings) + 1);
  return new Map(
    below.flatMap((record) => {
      const stray = strayCell(record, headings, named);
      return stray === undefined ? [] : [[record.row, stray] as const];
    }),
  );
}

/** Checks what stands around the cells of bodies, as `checkCell` does. */
function checkAround({ beside, corner, lines }: ChartTable, file: string): void {
  for (const { cells, row } of beside) checkCells(cells, file, row);
  for (const { text, row, column } of [corner, ...lines.map(({ label }) => label)])
    checkCell(text, { file, row, column });
}

/** Throws what `checkCell` throws for the name or a cell of a body. */
function checkEntry(columns: BodyColumns, entry: BodyEntry): void {
  const { file } = columns;
  const { name, cells, stray } = entry;
  checkCell(name, { file, ...placeOf(columns, entry) });
  for (const { text, row, column } of [...cells, ...(stray === undefined ? [] : [stray])])
    checkCell(text, { file, row, column });
}

/** What a line changes for all that follow it is no matter of one body. */
export function refuseHeader(file: string, row: number): never {
  throw new InputError('measurement-twice', {
    what: 'a header stands among the bodies, by which those below it may be read otherwise',
    allowed: 'one header above all bodies',
    place: { file, row },
  });
}

/** What is refused of a list as a whole is told without what it has in its first column, which may be names. */
function withoutGot<Value>(read: () => Value): Value {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const { got: _, ...problem } = error.problem;
    throw new InputError(error.code, problem);
  }
}

function entriesOf(
  { layout, sizes }: ChartTable,
  lines: readonly MeasurementLine[],
): readonly BodyEntry[] {
  return sizes.map((label, i) => ({
    number: layout === 'size-rows' ? label.row : label.column,
    name: tidyText(label.text),
    cells: lines.map(({ cells }) => cells[i] ?? { ...label, text: '' }),
  }));
}

/** Where a body stands in its file. */
export function placeOf({ layout }: BodyColumns, { number }: BodyEntry): Place {
  return layout === 'size-rows' ? { row: number } : { column: number };
}

/** What a body is called where it has no name, or none is to be told: `row 7`, or `column 3`. */
export function placeName({ layout }: BodyColumns, { number }: BodyEntry): string {
  return `${layout === 'size-rows' ? 'row' : 'column'} ${number}`;
}

/** What a step is reckoned with, and assumed of a body of which it is not known. */
const ASSUMED: ReadonlySet<string> = new Set(
  WALKING_ROWS.filter((name) => !NEEDED.some((needed) => needed === name)),
);

/** The name of a body where its pattern is to be told from all others of the list: with its place where two have it. */
export function distinctName(list: BodyList, entry: BodyEntry): string {
  const { name } = entry;
  const isShared =
    name !== '' && list.entries.some((other) => other !== entry && other.name === name);
  return isShared ? `${name}, ${placeName(list, entry)}` : name;
}

/**
 * One body as a chart of one size, without the rows that may be assumed where its cell is blank, called by
 * its place. Throws InputError for a name or a cell that `checkCell` refuses, for what is called as no body is,
 * for a cell below no heading, for one that is needed or known and cannot be read, and `measurement-doubtful`
 * for one that is no adult's.
 */
export function bodyChart(columns: BodyColumns, entry: BodyEntry): SizeChart {
  const name = placeName(columns, entry);
  const { file, comments, unit } = columns;
  if (entry.isRemark === true) refuseRemark(columns, entry.number);
  checkEntry(columns, entry);
  refuseNoBody(columns, entry);
  refuseStray(columns, entry);
  const rows = readEach(columns.columns, (column, i) => {
    const cell = entry.cells[i] ?? { ...column.label, text: '' };
    return measurementRow({ ...column, cells: [cell] }, [{ name, index: 0 }], unit, file);
  });
  const chart: SizeChart = {
    ...{ file, comments, unit, sizes: [name], largestFirst: false },
    rows: rows.filter(({ name: row, cells }) => !ASSUMED.has(row) || cells[0]?.trim() !== ''),
    // How the list is laid out says nothing of a body.
    layout: 'measurement-rows',
  };
  checkBody(chart);
  // What no draft needs, such as a knee, would otherwise be passed over where it cannot be read.
  readEach(
    chart.rows.filter(
      ({ known, values, cells }) => known && values[0] === null && cells[0]?.trim() !== '',
    ),
    (row) => needValues(chart, row.name),
  );
  return chart;
}

/** Throws `cell-not-a-number` for a cell below no heading: it may be a part of the number before it. */
function refuseStray({ file }: BodyColumns, { stray }: BodyEntry): void {
  if (stray === undefined) return;
  throw new InputError('cell-not-a-number', {
    what: 'a cell stands below no heading',
    allowed:
      'a heading for every column; a number with a decimal comma between quotes, or cells parted by semicolons',
    got: excerpt(stray.text),
    place: { file, row: stray.row, column: stray.column },
  });
}

/** Throws `measurement-missing` for a list without the measurements that every draft needs. */
function refuseMissing({ columns, file }: BodyColumns): void {
  const rows = columns.map(({ name, known, label }) => ({
    name,
    known,
    label: tidyText(label.text),
  }));
  needRows({ file, rows }, NEEDED);
}
