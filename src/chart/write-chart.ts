/** Writes a chart of body measurements as CSV text in its canonical form. */
import { writtenCsv } from '../table/written-csv';
import type { LengthUnit } from '../units';
import { fromMillimeters, trimmed } from '../units';
import type { MeasurementRow, SizeChart } from './size-chart';
import { roundedWords, tapeLength } from './tape-length';

/** Decimals of a written length: enough in every unit to read the same within 1e-10 mm. */
const DECIMALS = 12;
/** Parts of a unit to which lengths of another ruler are rounded: a sixteenth of an inch, a millimeter. */
const PARTS: Readonly<Record<LengthUnit, number>> = { in: 16, cm: 10, mm: 1 };
const PART_WORDS: Readonly<Record<LengthUnit, string>> = {
  in: 'sixteenths of an inch',
  cm: 'millimeters',
  mm: 'millimeters',
};

/**
 * The chart as CSV, one measurement a row and the smallest size first, in its own unit or another. From inches
 * to centimeters and back lengths are rounded as a tape shows them, and a remark above the table says so.
 * Known measurements go by their names; unknown rows, and cells that are no lengths, stay as typed.
 */
export function writeChart(chart: SizeChart, unit: LengthUnit = chart.unit): string {
  const isRounded = (unit === 'in') !== (chart.unit === 'in');
  const lines = [
    `unit: ${unit}`,
    ...chart.comments.map(({ text }) => text),
    ...(isRounded ? [`not read: ${roundedWords(PART_WORDS[unit], chart.unit)}`] : []),
  ];
  const written = (mm: number): string =>
    isRounded ? tapeLength(mm, unit, PARTS[unit]) : trimmed(fromMillimeters(mm, unit), DECIMALS);
  const comments = lines.map((text) => `# ${text}`.trimEnd());
  const records = [
    ['measurement', ...chart.sizes],
    ...chart.rows.map((row) => [writtenLabel(row), ...writtenCells(row, written)]),
  ];
  return `${comments.join('\n')}\n${writtenCsv(records)}`;
}

function writtenLabel({ known, name, label }: MeasurementRow): string {
  // A label that begins with the comment mark would be lost in the first column.
  return known || label.startsWith('#') ? name : label;
}

function writtenCells(row: MeasurementRow, written: (mm: number) => string): readonly string[] {
  if (!row.known) return row.cells;
  return row.values.map((mm, index) => (mm === null ? (row.cells[index] ?? '') : written(mm)));
}
