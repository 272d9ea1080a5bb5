/** A chart of body measurements over a range of sizes, as an immutable value in millimeters. */
import type { SaidLine } from '../table/said-line';
import { allStated } from '../table/said-line';
import { hasFractions } from '../table/typed-fractions';
import type { LengthUnit } from '../units';

/** One measurement of the body over all sizes of a chart. */
export interface MeasurementRow {
  /** ISO 8559-1 style name in snake_case, or the label in snake_case if it is not known. */
  readonly name: string;
  /** The label as it was typed. */
  readonly label: string;
  /** False where the engine does not know the measurement; such rows are kept, not used. */
  readonly known: boolean;
  /** Millimeters, one a size in the order of `sizes`; null where the cell is blank or unreadable. */
  readonly values: readonly (number | null)[];
  /** The cells as typed, in the same order. */
  readonly cells: readonly string[];
  /** Row and column in the file (from 1) of each cell. */
  readonly places: readonly { readonly row: number; readonly column: number }[];
}

/** A chart as read: measurements by rows, sizes in rising order, lengths in mm. */
export interface SizeChart {
  /** Name for messages, usually the file's. */
  readonly file: string;
  /** Comment and title lines, the title marked as such. */
  readonly comments: readonly SaidLine[];
  /** The unit in which the file is written; the values here are mm all the same. */
  readonly unit: LengthUnit;
  /** Size labels from the smallest body to the largest, whatever the order in the file. */
  readonly sizes: readonly string[];
  /** In the order of the file, the unknown ones too. */
  readonly rows: readonly MeasurementRow[];
  /** How the file was laid out: one measurement a row, or one size a row. */
  readonly layout: 'measurement-rows' | 'size-rows';
  /** True where the file lists the sizes from large to small. */
  readonly largestFirst: boolean;
}

/** What the first line such as `# base: 10` states, as typed; undefined for none. */
export function statedBase({ comments }: Pick<SizeChart, 'comments'>): string | undefined {
  return allStated(comments, 'base')[0]?.text;
}

/** The row of a measurement, or undefined where the chart has none. */
export function findRow(chart: SizeChart, name: string): MeasurementRow | undefined {
  return chart.rows.find((row) => row.name === name);
}

/** Whether a measurement of a chart was typed as a fraction. */
export function isInFractions({ rows }: SizeChart): boolean {
  return rows.some(({ known, cells }) => known && cells.some(hasFractions));
}

/** Where a cell of a row stands, for a message. */
export function placeOf({ file, sizes }: SizeChart, row: MeasurementRow, index: number) {
  return { file, ...row.places[index], size: sizes[index] ?? '', measurement: row.name };
}
