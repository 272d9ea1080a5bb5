/** The published tables that a chart is held against, and which of them may warn. */
import type { SizeChart } from '../chart/size-chart';
import type { PublishedTable } from '../standards/published-table';
import { publishedTable } from '../standards/published-tables';
import type { RankedTable } from '../standards/rank-tables';
import { MOST_OF_RANGE, chosenTables, rankTable } from '../standards/rank-tables';
import { chartBodies } from './chart-bodies';
import { compareRange } from './chart-compare';

/** A published table that a chart is compared with, and why. */
export interface ComparedTable extends RankedTable {
  /** 1 for the nearest of those that were chosen; undefined where the table was asked for. */
  readonly rank: number | undefined;
  /** True where a range that differs is a warning and not a note. */
  readonly warns: boolean;
}

/**
 * The tables named, or else the nearest three. A table that was asked for speaks for itself. Of
 * those chosen only the nearest warns, and only if none of them that covers most of the chart
 * agrees with it: published tables disagree with one another, so to differ from one of them is no
 * news where another goes along. A survey and figures from memory never warn. Throws InputError
 * `standard-unknown` naming the tables there are.
 */
export function comparedTables(
  chart: SizeChart,
  against: readonly string[] | undefined,
): ComparedTable[] {
  const bodies = chartBodies(chart);
  if (against !== undefined) {
    return against.map(publishedTable).map((table) => ({
      ...rankTable(table, bodies),
      rank: undefined,
      warns: canWarn(table),
    }));
  }
  const nearest = chosenTables(bodies);
  const borneOut = nearest.some(
    ({ table, coverage }) =>
      coverage > MOST_OF_RANGE && compareRange(chart, table)?.agrees === true,
  );
  return nearest.map((ranked, i) => ({
    ...ranked,
    rank: i + 1,
    warns: i === 0 && !borneOut && canWarn(ranked.table),
  }));
}

function canWarn({ kind, waist, hip }: PublishedTable): boolean {
  const remembered = [waist, hip].some(({ certainty }) => certainty.startsWith('from memory'));
  return kind !== 'survey' && !remembered;
}
