/** The published tables that a chart is held against, and which of them may warn. */
import type { SizeChart } from '../chart/size-chart';
import type { PublishedTable } from '../standards/published-table';
import { publishedTable } from '../standards/published-tables';
import type { RankedTable } from '../standards/rank-tables';
import { MOST_OF_RANGE, chosenTables, rankTable } from '../standards/rank-tables';
import { chartBodies } from './chart-bodies';
import { compareRange, compareSteps } from './chart-compare';

/** A published table that a chart is compared with, and why. */
export interface ComparedTable extends RankedTable {
  /** 1 for the nearest of those that were chosen; undefined where the table was asked for. */
  readonly rank: number | undefined;
  /** True where a range that differs is a warning and not a note. */
  readonly warns: boolean;
}

/**
 * The tables named, or else the nearest, three at most. A table that was asked for speaks for itself. Of
 * those chosen only one warns: the nearest whose range differs even without the steps that another
 * bears out. Published tables disagree with one another, so to differ from one of them is no news
 * where another goes along; but a table says nothing of the steps that it does not cover. A survey
 * and figures from memory never warn. Throws InputError `standard-unknown` naming the tables there
 * are.
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
  const nearest = chosenTables(bodies).map((ranked) => ({
    ranked,
    range: compareRange(chart, ranked.table),
    steps: compareSteps(chart, ranked.table).map(({ table }) => table?.difference),
  }));
  const agreeing = nearest.filter(
    ({ ranked, range }) => ranked.coverage > MOST_OF_RANGE && range?.agrees === true,
  );
  const warning = nearest.find(({ ranked, range, steps }) => {
    if (range === undefined || range.agrees || !canWarn(ranked.table)) return false;
    const alone = steps.map((difference, i) =>
      agreeing.some((other) => other.steps[i] !== undefined) ? 0 : (difference ?? 0),
    );
    return widestSum(alone) > range.tolerance;
  });
  return nearest.map((compared, i) => ({
    ...compared.ranked,
    rank: i + 1,
    warns: compared === warning,
  }));
}

/** The largest sum, up or down, of differences that follow one another. */
function widestSum(differences: readonly number[]): number {
  const sums = differences.reduce((all, each) => [...all, (all.at(-1) ?? 0) + each], [0]);
  return Math.max(...sums) - Math.min(...sums);
}

function canWarn({ kind, waist, hip }: PublishedTable): boolean {
  const remembered = [waist, hip].some(({ certainty }) => certainty.startsWith('from memory'));
  return kind !== 'survey' && !remembered;
}
