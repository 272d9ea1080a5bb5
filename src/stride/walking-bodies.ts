/** What a chart tells about the walkers of its sizes. */
import type { SizeChart } from '../chart/size-chart';
import { findRow } from '../chart/size-chart';
import { WALKING_ROWS } from './walker';

/** One map a size in the chart's order, row to mm; rows that are missing or blank are left out. */
export function walkingBodies(chart: SizeChart): readonly ReadonlyMap<string, number>[] {
  const rows = WALKING_ROWS.flatMap((name) => findRow(chart, name) ?? []);
  return chart.sizes.map(
    (_, i) =>
      new Map(
        rows.flatMap(({ name, values }): [string, number][] => {
          const value = values[i] ?? null;
          return value === null ? [] : [[name, value]];
        }),
      ),
  );
}
