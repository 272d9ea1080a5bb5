/** The values of a measurement that a caller cannot do without. */
import { InputError, readEach } from '../errors';
import { cellError, readCell } from './chart-cell';
import type { MeasurementRow, SizeChart } from './size-chart';
import { findRow } from './size-chart';
import { nearMeasurement } from './vocabulary';
import { listedNames } from '../table/near-names';

/**
 * Throws `measurement-missing` for the first of the names that no row of the chart has, and tells the
 * others that are missing with it, and which rows may be meant.
 */
export function needRows(
  chart: {
    readonly file: string;
    readonly rows: readonly Pick<MeasurementRow, 'name' | 'label' | 'known'>[];
  },
  names: readonly string[],
): void {
  const missing = names.filter((name) => chart.rows.every((row) => row.name !== name));
  const [first] = missing;
  if (first === undefined) return;
  const meant = chart.rows
    .filter(({ known }) => !known)
    .map(({ label }) => ({ label, name: nearMeasurement(label) }))
    .filter(({ name }) => name !== undefined && missing.includes(name))
    .map(({ label, name }) => `; "${label}" may be meant for ${name}`);
  const rows = `row${missing.length > 1 ? 's' : ''} ${missing.join(' and ')}`;
  throw new InputError('measurement-missing', {
    what: `the chart has no ${rows}${meant.join('')}`,
    allowed: `${missing.length > 1 ? '' : 'a '}${rows}, by that name or another that is usual`,
    got: listedNames(chart.rows.map(({ label }) => label)),
    place: { file: chart.file, measurement: first },
  });
}

/**
 * The values of a row in millimeters, one a size in the chart's order, all of them there. Throws
 * `measurement-missing` if the chart has no such row, else for all cells without a length one error,
 * `cell-missing`, `cell-not-a-number` or `cell-not-positive` with their places.
 */
export function needValues(chart: SizeChart, name: string): readonly number[] {
  needRows(chart, [name]);
  const row = findRow(chart, name) as MeasurementRow;
  return readEach(row.values, (value, index) => {
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
