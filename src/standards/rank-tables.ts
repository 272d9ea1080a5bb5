/** Which published tables come nearest to a chart, and whether one of them is the chart itself. */
import { SAME_CELL, SAME_PLACE } from '../tolerance';
import { CATALOG } from './catalog';
import type { TableSize } from './hip-curve';
import { hipAtWaist, waistRange } from './hip-curve';
import type { PublishedTable } from './published-table';
import { readPublishedTable } from './read-published-table';

/** More would bury the reader: the tables repeat one another. */
const MOST = 3;
/** Share of a chart's waist range above which a table covers most of it. No tolerance: a majority. */
export const MOST_OF_RANGE = 0.5;
/** Share of a chart's waist range below which a table says too little of the chart to be shown. */
const LEAST_OF_RANGE = 1 / 3;
/**
 * mm. What a hip is off by where a table says nothing: the spread of measured hips at one waist
 * (residual standard deviation in the 1988 survey of US Army women, see its file).
 */
const UNCOVERED = 40.5;
/** So few sizes alike are no accident, unless the chart has no more. */
const TELLING = 3;

/** A size of the chart and the size of the table whose waist and hip it has. */
export interface SharedSize {
  readonly size: string;
  readonly inTable: string;
}

/** A published table, and how near a chart it lies. */
export interface RankedTable {
  readonly table: PublishedTable;
  /** Share of the chart's waist range that lies in the table's, 0 to 1. */
  readonly coverage: number;
  /** mm. How far the chart's hips lie from the table's at the same waist, on average; NaN for none. */
  readonly distance: number;
  /** Sizes that both have, cell for cell, from small to large. */
  readonly shared: readonly SharedSize[];
  /** True if every size of the chart within the table's range is one of the table's. */
  readonly identical: boolean;
}

/** How one table lies to the bodies of a chart (mm, from small to large). */
export function rankTable(table: PublishedTable, bodies: readonly TableSize[]): RankedTable {
  const covered = bodies.flatMap((body) => {
    const hip = hipAtWaist(table, body.waist);
    return hip === undefined ? [] : [{ body, off: Math.abs(body.hip - hip) }];
  });
  const shared = covered.flatMap(({ body }) => sharedSize(table, body));
  return {
    table,
    coverage: coverage(table, bodies),
    distance: covered.reduce((sum, { off }) => sum + off, 0) / covered.length,
    shared,
    identical:
      shared.length === covered.length &&
      shared.length >= Math.min(TELLING, bodies.length) &&
      shared.length > 1,
  };
}

/**
 * At most three tables, the nearest first: identical ones, then by how much of the chart's waist
 * range they cover and how near its hips lie to theirs. Of the body types of one edition only the
 * nearer counts; plus sizes only for a chart that is mostly of them; a survey, which is no size
 * table, only where the chart is its very figures. None that covers fewer than two sizes or, unless it is
 * identical, no more than a third of the range.
 */
export function chosenTables(bodies: readonly TableSize[]): RankedTable[] {
  const ranked = CATALOG.flatMap((entry) => {
    if ('unusable' in entry.table) return [];
    const rank = rankTable(readPublishedTable(entry, entry.table), bodies);
    const fits =
      rank.identical ||
      (entry.kind !== 'survey' && rank.coverage > (entry.plus ? MOST_OF_RANGE : LEAST_OF_RANGE));
    return fits ? [{ ...rank, family: entry.family ?? entry.id }] : [];
  }).sort((a, b) => Number(b.identical) - Number(a.identical) || score(a) - score(b));
  return ranked
    .filter(({ family }, i) => ranked.findIndex((other) => other.family === family) === i)
    .slice(0, MOST)
    .map(({ family: _, ...rank }) => rank);
}

/** mm. The mean distance over the whole chart; what is not covered counts as the spread of bodies. */
function score({ coverage, distance }: RankedTable): number {
  return coverage * distance + (1 - coverage) * UNCOVERED;
}

/** 0 unless two sizes or more lie in the table's range. */
function coverage(table: PublishedTable, bodies: readonly TableSize[]): number {
  const range = waistRange(table);
  const within = bodies.filter(({ waist }) => hipAtWaist(table, waist) !== undefined);
  if (range === undefined || within.length < 2) return 0;
  const waists = bodies.map(({ waist }) => waist);
  const [least, most] = [Math.min(...waists), Math.max(...waists)];
  if (most - least < SAME_PLACE) return 1;
  return (Math.min(most, range.greatest) - Math.max(least, range.least)) / (most - least);
}

function sharedSize(table: PublishedTable, { size, waist, hip }: TableSize): SharedSize[] {
  const near = (a: number | undefined, b: number) => Math.abs((a ?? NaN) - b) <= SAME_CELL;
  const at = table.sizes.findIndex(
    (_, i) => near(table.waist.values[i], waist) && near(table.hip.values[i], hip),
  );
  const inTable = table.sizes[at];
  return inTable === undefined ? [] : [{ size, inTable }];
}
