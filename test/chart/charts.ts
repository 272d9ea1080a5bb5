import { expect } from 'vitest';
import { readChart } from '../../src/chart/read-chart';
import type { SizeChart } from '../../src/chart/size-chart';

export const CANONICAL = [
  '# unit: in',
  'measurement,8,10,12',
  'waist_girth,25,26.5,28',
  'hip_girth,34.5,36,38',
  'waist_to_hip,8,8.25,8.5',
  '',
].join('\n');

/** What a chart says, without how it was written down. */
export function meaning({ sizes, rows }: SizeChart) {
  return {
    sizes,
    rows: rows.map(({ name, known, values }) => ({ name, known, values })),
  };
}

/** Expects both charts to have the same sizes, rows and values, within 1e-9 mm. */
export function expectSameMeaning(actual: SizeChart, expected: SizeChart): void {
  const withoutValues = (chart: SizeChart) => ({
    sizes: chart.sizes,
    rows: chart.rows.map(({ name, known, values }) => [name, known, values.map((v) => v === null)]),
  });
  expect(withoutValues(actual)).toEqual(withoutValues(expected));
  for (const [index, row] of expected.rows.entries()) {
    for (const [size, value] of row.values.entries()) {
      const other = actual.rows[index]?.values[size] ?? 0;
      expect(Math.abs(other - (value ?? 0))).toBeLessThan(1e-9);
    }
  }
}

/** A chart of lines without their line ends. */
export function chartOf(...lines: string[]): SizeChart {
  return readChart(lines.join('\n'), 'chart.csv');
}
