/** Every check of a chart: its own smoothness, and its increments against published tables. */
import type { SizeChart } from '../chart/size-chart';
import type { LengthDisplay } from '../units';
import { checkAgainstStandard } from './chart-against-standard';
import { checkChartSteps } from './chart-steps';
import { checkWaistToHip } from './chart-waist-to-hip';
import type { ComparedTable } from './compared-tables';
import { comparedTables } from './compared-tables';
import { checkFallingLengths } from './falling-lengths';
import type { Finding } from './finding';
import { checkIdenticalColumns } from './identical-sizes';

/**
 * `against` names published tables; without it the nearest are chosen. Throws InputError
 * `standard-unknown` naming the tables there are.
 */
export function checkChart(
  chart: SizeChart,
  display: LengthDisplay,
  against?: readonly string[],
): Finding[] {
  const tables = comparedTables(chart, against);
  return [
    ...withoutTablesOwn(checkChartSteps(chart, display), tables),
    ...checkIdenticalColumns(chart),
    ...checkFallingLengths(chart, display),
    ...checkWaistToHip(chart, display),
    ...tables.flatMap((table) => checkAgainstStandard(chart, table, display)),
  ];
}

/** A step that goes up and down in a published table too is no slip, so it is a note. */
function withoutTablesOwn(
  findings: readonly Finding[],
  tables: readonly ComparedTable[],
): Finding[] {
  const own = new Set(
    tables
      .filter(({ identical }) => identical)
      .flatMap(({ shared }) =>
        shared.slice(1).map(({ size }, i) => `${shared[i]?.size ?? ''}-${size}`),
      ),
  );
  return findings.map((finding) =>
    finding.check === 'uneven-steps' && own.has(finding.size)
      ? { ...finding, severity: 'note' }
      : finding,
  );
}
