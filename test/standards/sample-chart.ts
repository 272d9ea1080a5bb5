import type { SizeChart } from '../../src/chart/size-chart';
import type { PublishedTable } from '../../src/standards/published-table';
import type { LengthUnit } from '../../src/units';
import { toMillimeters } from '../../src/units';

/** A chart as its reader would make it; rows in `unit`, null for a blank cell. */
export function sampleChart(
  unit: LengthUnit,
  sizes: readonly string[],
  rows: Readonly<Record<string, readonly (number | null)[]>>,
): SizeChart {
  return {
    file: 'sample.csv',
    comments: [],
    unit,
    sizes,
    rows: Object.entries(rows).map(([name, values], row) => ({
      name,
      label: name,
      known: true,
      values: values.map((value) => (value === null ? null : toMillimeters(value, unit))),
      cells: values.map((value) => (value === null ? '' : `${value}`)),
      places: values.map((_, column) => ({ row: row + 2, column: column + 2 })),
    })),
    layout: 'measurement-rows',
    largestFirst: false,
  };
}

/** A published table fed back as a chart. */
export function chartOf(table: PublishedTable): SizeChart {
  return sampleChart('mm', table.sizes, {
    waist_girth: table.waist.values,
    hip_girth: table.hip.values,
  });
}

/** A chart from its smallest waist and hip and the steps between its sizes; sizes are 1, 2, ... */
export function chartOfSteps(
  unit: LengthUnit,
  [waist, hip]: readonly [number, number],
  waistSteps: readonly number[],
  hipSteps: readonly number[],
): SizeChart {
  const sums = (start: number, steps: readonly number[]) =>
    steps.reduce((sums, step) => [...sums, (sums.at(-1) ?? 0) + step], [start]);
  const sizes = [0, ...waistSteps].map((_, index) => `${index + 1}`);
  return sampleChart(unit, sizes, {
    waist_girth: sums(waist, waistSteps),
    hip_girth: sums(hip, hipSteps),
  });
}
