/** Writes a chart of body measurements as CSV text in its canonical form. */
import { writtenCsv } from '../table/written-csv';
import type { LengthUnit } from '../units';
import { fromMillimeters, trimmed } from '../units';
import type { MeasurementRow, SizeChart } from './size-chart';

/** Decimals of a written length: enough in every unit to read the same within 1e-10 mm. */
const DECIMALS = 12;

/**
 * The chart as CSV, one measurement a row and the smallest size first, in its own unit or another.
 * Known measurements go by their names; unknown rows, and cells that are no lengths, stay as typed.
 */
export function writeChart(chart: SizeChart, unit: LengthUnit = chart.unit): string {
  const lines = [`unit: ${unit}`, ...chart.comments.map(({ text }) => text)];
  const comments = lines.map((text) => `# ${text}`.trimEnd());
  const records = [
    ['measurement', ...chart.sizes],
    ...chart.rows.map((row) => [writtenLabel(row), ...writtenCells(row, unit)]),
  ];
  return `${comments.join('\n')}\n${writtenCsv(records)}`;
}

function writtenLabel({ known, name, label }: MeasurementRow): string {
  // A label that begins with the comment mark would be lost in the first column.
  return known || label.startsWith('#') ? name : label;
}

function writtenCells(row: MeasurementRow, unit: LengthUnit): readonly string[] {
  if (!row.known) return row.cells;
  return row.values.map((mm, index) =>
    mm === null ? (row.cells[index] ?? '') : trimmed(fromMillimeters(mm, unit), DECIMALS),
  );
}
