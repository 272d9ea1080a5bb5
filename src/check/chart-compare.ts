/** The steps of a chart beside those of a published table, as numbers. */
import type { SizeChart } from '../chart/size-chart';
import { hipAtWaist, intervalAt } from '../standards/hip-curve';
import type { PublishedTable } from '../standards/published-table';
import { INCREMENT_AGREES, SAME_PLACE } from '../tolerance';
import type { ChartStep } from './chart-bodies';
import { chartSteps } from './chart-bodies';

/** What the table says at the waist of one step of the chart; millimeters. */
export interface TableStep {
  /** The sizes of the table whose waists lie about the middle of the chart's step. */
  readonly from: string;
  readonly to: string;
  /** The table's own step between these two sizes. */
  readonly waist: number;
  readonly hip: number;
  /** What the table's hip grows while its waist grows as the chart's does. */
  readonly hipGrowth: number;
  /** The chart's hip step less `hipGrowth`. */
  readonly difference: number;
  /** True where the difference is at most `INCREMENT_AGREES`. */
  readonly agrees: boolean;
}

/** A step of the chart beside what a table has at the same waist. */
export interface StepComparison {
  readonly chart: ChartStep;
  /** Undefined where either waist lies outside the table's range. */
  readonly table: TableStep | undefined;
}

/** Every step of the chart, from small to large, with what the table says there. */
export function compareSteps(chart: SizeChart, table: PublishedTable): StepComparison[] {
  return chartSteps(chart).map((step) => ({ chart: step, table: tableStep(step, table) }));
}

function tableStep({ from, to, hip }: ChartStep, table: PublishedTable): TableStep | undefined {
  const hipFrom = hipAtWaist(table, from.waist);
  const hipTo = hipAtWaist(table, to.waist);
  const interval = intervalAt(table, (from.waist + to.waist) / 2);
  if (hipFrom === undefined || hipTo === undefined || interval === undefined) return undefined;
  const hipGrowth = hipTo - hipFrom;
  const difference = hip - hipGrowth;
  return {
    from: interval.from.size,
    to: interval.to.size,
    waist: interval.to.waist - interval.from.waist,
    hip: interval.to.hip - interval.from.hip,
    hipGrowth,
    difference,
    agrees: Math.abs(difference) <= INCREMENT_AGREES + SAME_PLACE,
  };
}
