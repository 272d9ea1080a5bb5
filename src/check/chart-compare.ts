/** The steps and the range of a chart beside those of a published table, as numbers. */
import type { SizeChart } from '../chart/size-chart';
import { hipAtWaist, intervalAt, stretchBetween } from '../standards/hip-curve';
import type { PublishedTable } from '../standards/published-table';
import { INCREMENT_AGREES, SAME_PLACE, SAME_STEP } from '../tolerance';
import type { ChartBody, ChartStep } from './chart-bodies';
import { chartBodies, chartSteps } from './chart-bodies';

/** A step of the chart that is worth more of the table's spans several of them.
 * No tolerance: it parts one from two. */
const SPANS_SEVERAL = 1.5;

/** What the table says at the waist of one step of the chart; millimeters. */
export interface TableStep {
  /** The sizes of the table about the chart's step: two neighbors, or all that it spans. */
  readonly from: string;
  readonly to: string;
  /** What the table's own girths grow between these two sizes. */
  readonly waist: number;
  readonly hip: number;
  /** How many steps of the table the chart's step is worth, if it spans several; else 1. */
  readonly spans: number;
  /** What the table's hip grows while its waist grows as the chart's does. */
  readonly hipGrowth: number;
  /** The chart's hip step less `hipGrowth`. */
  readonly difference: number;
  /** How large the difference may be: a share of the step, and never less than `SAME_STEP`. */
  readonly tolerance: number;
  /** True where the difference is within the tolerance. */
  readonly agrees: boolean;
}

/** A step of the chart beside what a table has at the same waist. */
export interface StepComparison {
  readonly chart: ChartStep;
  /** Undefined where either waist lies outside the table's range. */
  readonly table: TableStep | undefined;
}

/** The sizes of a chart that a table covers, from the first to the last; millimeters. */
export interface RangeComparison {
  readonly from: ChartBody;
  readonly to: ChartBody;
  readonly waist: number;
  readonly hip: number;
  /** What the table's hip grows between the same two waists. */
  readonly hipGrowth: number;
  /** The chart's hip growth less the table's. */
  readonly difference: number;
  /** The two sizes between which the chart's hip gains or loses most against the table's. */
  readonly swing: {
    readonly from: ChartBody;
    readonly to: ChartBody;
    readonly difference: number;
  };
  /** Half of the chart's mean hip step: a hip that is farther off belongs to another size. */
  readonly tolerance: number;
  /** True where neither the whole range nor a part of it would change the label of a size. */
  readonly agrees: boolean;
}

/** Every step of the chart, from small to large, with what the table says there. */
export function compareSteps(chart: SizeChart, table: PublishedTable): StepComparison[] {
  return chartSteps(chart).map((step) => ({ chart: step, table: tableStep(step, table) }));
}

function tableStep({ from, to, hip }: ChartStep, table: PublishedTable): TableStep | undefined {
  const hipFrom = hipAtWaist(table, from.waist);
  const hipTo = hipAtWaist(table, to.waist);
  const middle = intervalAt(table, (from.waist + to.waist) / 2);
  const [least, most] = [Math.min(from.waist, to.waist), Math.max(from.waist, to.waist)];
  const stretch = stretchBetween(table, least, most);
  if (hipFrom === undefined || hipTo === undefined) return undefined;
  if (middle === undefined || stretch === undefined) return undefined;
  const several = stretch.steps >= SPANS_SEVERAL - SAME_PLACE;
  const own = several ? stretch : middle;
  const hipGrowth = hipTo - hipFrom;
  const difference = hip - hipGrowth;
  const tolerance = Math.max(SAME_STEP, INCREMENT_AGREES * Math.abs(hipGrowth));
  return {
    from: own.from.size,
    to: own.to.size,
    waist: own.to.waist - own.from.waist,
    hip: own.to.hip - own.from.hip,
    spans: several ? stretch.steps : 1,
    hipGrowth,
    difference,
    tolerance,
    agrees: Math.abs(difference) <= tolerance + SAME_PLACE,
  };
}

/** The range that the table covers; undefined where that is fewer than two sizes. */
export function compareRange(chart: SizeChart, table: PublishedTable): RangeComparison | undefined {
  const covered = chartBodies(chart).flatMap((body) => {
    const hip = hipAtWaist(table, body.waist);
    return hip === undefined ? [] : [{ body, over: body.hip - hip }];
  });
  const [first, last] = [covered[0], covered.at(-1)];
  if (first === undefined || last === undefined || covered.length < 2) return undefined;
  const hip = last.body.hip - first.body.hip;
  const difference = last.over - first.over;
  const overs = covered.map(({ over }) => over);
  const lowest = covered.find(({ over }) => over <= Math.min(...overs) + SAME_PLACE) ?? first;
  const highest = covered.find(({ over }) => over >= Math.max(...overs) - SAME_PLACE) ?? last;
  const [from, to] =
    covered.indexOf(lowest) < covered.indexOf(highest) ? [lowest, highest] : [highest, lowest];
  const tolerance = Math.max(SAME_STEP, Math.abs(hip) / (covered.length - 1) / 2);
  return {
    from: first.body,
    to: last.body,
    waist: last.body.waist - first.body.waist,
    hip,
    hipGrowth: hip - difference,
    difference,
    swing: { from: from.body, to: to.body, difference: to.over - from.over },
    tolerance,
    agrees: highest.over - lowest.over <= tolerance + SAME_PLACE,
  };
}
