/** Inferred steps of waist and hip beside those of published tables, which are slid along them. */
import { publishedTable, publishedTables } from '../../standards/published-tables';
import type { PublishedTable } from '../../standards/published-table';

/** One step between neighboring sizes, mm. */
export interface GirthStep {
  readonly waist: number;
  readonly hip: number;
}

/** A published table at the place where its steps come nearest to those of the sheet. */
export interface TableMatch {
  readonly table: PublishedTable;
  /** First and last size of the table, and place of the first step of the sheet, that are compared. */
  readonly from: string;
  readonly to: string;
  readonly first: number;
  /** Steps compared. */
  readonly count: number;
  /** mm: root of the mean square of the differences of waist and hip steps, and the largest. */
  readonly mean: number;
  readonly largest: number;
}

/** For every published table the place where its steps come nearest; the nearest table first. */
export function nearestTables(steps: readonly GirthStep[]): readonly TableMatch[] {
  return publishedTables()
    .filter(({ unusable }) => unusable === undefined)
    .flatMap(({ id }) => {
      const match = nearest(publishedTable(id), steps);
      return match === undefined ? [] : [match];
    })
    .sort((a, b) => a.mean - b.mean || b.count - a.count);
}

/** As many steps as both have are compared, at the offset where they differ least. */
function nearest(table: PublishedTable, steps: readonly GirthStep[]): TableMatch | undefined {
  const own = table.sizes.slice(1).map((_, i): GirthStep => ({
    waist: (table.waist.values[i + 1] ?? NaN) - (table.waist.values[i] ?? NaN),
    hip: (table.hip.values[i + 1] ?? NaN) - (table.hip.values[i] ?? NaN),
  }));
  const count = Math.min(own.length, steps.length);
  if (count === 0) return undefined;
  let best: TableMatch | undefined;
  for (let first = 0; first + count <= steps.length; first++)
    for (let at = 0; at + count <= own.length; at++) {
      const differences = steps
        .slice(first, first + count)
        .flatMap(({ waist, hip }, i) => [
          waist - (own[at + i]?.waist ?? NaN),
          hip - (own[at + i]?.hip ?? NaN),
        ]);
      const squares = differences.reduce((sum, one) => sum + one ** 2, 0);
      const mean = Math.sqrt(squares / differences.length);
      if (best !== undefined && !(mean < best.mean)) continue;
      const largest = Math.max(...differences.map(Math.abs));
      const [from = '', to = ''] = [table.sizes[at], table.sizes[at + count]];
      best = { table, from, to, first, count, mean, largest };
    }
  return best;
}
