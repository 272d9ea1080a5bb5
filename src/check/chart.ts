/** Every check of a chart: its own smoothness, and its increments against published tables. */
import type { SizeChart } from '../chart/size-chart';
import { defaultTables } from '../standards/default-tables';
import { publishedTable } from '../standards/published-tables';
import type { LengthDisplay } from '../units';
import { checkAgainstStandard } from './chart-against-standard';
import { checkChartSteps } from './chart-steps';
import { checkWaistToHip } from './chart-waist-to-hip';
import type { Finding } from './finding';

/**
 * `against` names published tables; without it a few that fit the chart are chosen. Throws
 * InputError `standard-unknown` naming the tables there are.
 */
export function checkChart(
  chart: SizeChart,
  display: LengthDisplay,
  against: readonly string[] = defaultTables(chart),
): Finding[] {
  const tables = against.map(publishedTable);
  return [
    ...checkChartSteps(chart, display),
    ...checkWaistToHip(chart, display),
    ...tables.flatMap((table) => checkAgainstStandard(chart, table, display)),
  ];
}
