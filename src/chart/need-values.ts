/** The values of a measurement that a caller cannot do without. */
import { InputError } from '../errors';
import { cellError, readCell } from './chart-cell';
import type { SizeChart } from './size-chart';
import { findRow } from './size-chart';

/**
 * The values of a row in millimeters, one a size in the chart's order, all of them there. Throws
 * `measurement-missing` if the chart has no such row, else for the first cell without a length
 * `cell-missing`, `cell-not-a-number` or `cell-not-positive` with its place.
 */
export function needValues(chart: SizeChart, name: string): readonly number[] {
  const row = findRow(chart, name);
  if (row === undefined) {
    throw new InputError('measurement-missing', {
      what: `the chart has no row ${name}`,
      allowed: `a row ${name}, by that name or another that is usual`,
      got: chart.rows.map(({ label }) => label).join(', '),
      place: { file: chart.file, measurement: name },
    });
  }
  return row.values.map((value, index) => {
    if (value !== null) return value;
    const text = row.cells[index] ?? '';
    const reading = readCell(text, chart.unit);
    if (reading.kind === 'length') return reading.mm;
    throw cellError(reading, text, {
      file: chart.file,
      ...row.places[index],
      size: chart.sizes[index] ?? '',
      measurement: name,
    });
  });
}
