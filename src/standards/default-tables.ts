/** Which published tables a chart is compared with when the user names none. */
import type { SizeChart } from '../chart/size-chart';
import { findRow } from '../chart/size-chart';
import { CATALOG } from './catalog';
import { hipAtWaist } from './hip-curve';
import { publishedTable } from './published-tables';

/** More would bury the reader: the tables repeat one another. */
const MOST = 3;

/**
 * Ids of at most three standards, the newest edition first, that cover at least two neighboring
 * sizes of the chart. A table known only from memory or for few sizes, a trade's table and a
 * survey have to be asked for by name.
 */
export function defaultTables(chart: SizeChart): string[] {
  const waists = findRow(chart, 'waist_girth')?.values ?? [];
  return CATALOG.filter(({ byDefault }) => byDefault)
    .toSorted((a, b) => b.year - a.year)
    .map(({ id }) => id)
    .filter((id) => coversAStep(id, waists))
    .slice(0, MOST);
}

function coversAStep(id: string, waists: readonly (number | null)[]): boolean {
  const table = publishedTable(id);
  const covered = waists.map((waist) => waist !== null && hipAtWaist(table, waist) !== undefined);
  return covered.some((here, index) => here && covered[index + 1] === true);
}
