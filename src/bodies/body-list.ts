/** A list of bodies as read: each is a chart of one size, or is set aside. */
import type { ChartCell, ChartTable } from '../chart/layout';
import type { MeasurementLine } from '../chart/measurement-lines';
import { measurementRow } from '../chart/measurement-lines';
import { readMeasurementTable } from '../chart/measurement-table';
import { needRows } from '../chart/need-values';
import type { SizeChart } from '../chart/size-chart';
import { NEEDED } from '../chart/vocabulary';
import { readEach } from '../errors';
import { WALKING_ROWS } from '../stride/walker';
import { MOST_CELLS } from '../table/limits';
import type { SaidLine } from '../table/said-line';
import { tidyText } from '../table/tidy-text';
import type { LengthUnit } from '../units';
import { findBodies } from './body-table';
import { checkBody } from './check-body';

/** What all bodies of a list have in common. */
export interface BodyColumns {
  readonly file: string;
  /** Comment and title lines. */
  readonly comments: readonly SaidLine[];
  readonly unit: LengthUnit;
  readonly layout: SizeChart['layout'];
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
  const { table, lines, unit, comments } = readMeasurementTable(text, file, {
    layoutOf: findBodies,
    mostCells: MOST_CELLS,
    name: 'list of bodies',
    header: 'a header such as `name,waist_girth,hip_girth` and a row for each body',
  });
  const columns: BodyColumns = { file, unit, layout: table.layout, columns: lines, comments };
  refuseMissing(columns);
  return { ...columns, entries: entriesOf(table, lines) };
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

/** What a body is called where it has no name, or none is to be told: `row 7`, or `column 3`. */
export function placeName({ layout }: BodyColumns, { number }: BodyEntry): string {
  return `${layout === 'size-rows' ? 'row' : 'column'} ${number}`;
}

/** What a step is reckoned with, and assumed of a body of which it is not known. */
const ASSUMED: ReadonlySet<string> = new Set(
  WALKING_ROWS.filter((name) => !NEEDED.some((needed) => needed === name)),
);

/**
 * One body as a chart of one size, without the rows that may be assumed where its cell is blank, called by its place. Throws InputError for a cell that is needed or
 * known and cannot be read, and `measurement-doubtful` for one that is no adult's.
 */
export function bodyChart(columns: BodyColumns, entry: BodyEntry): SizeChart {
  const name = placeName(columns, entry);
  const { file, comments, unit } = columns;
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
  return chart;
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
