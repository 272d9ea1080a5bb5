/** The waist and hip of a chart, size by size, and what they grow from size to size. */
import type { SizeChart } from '../chart/size-chart';
import { findRow } from '../chart/size-chart';

/** One size of the chart; millimeters. */
export interface ChartBody {
  readonly size: string;
  readonly waist: number;
  readonly hip: number;
}

/** What the girths grow from one size to the next; millimeters, negative where a girth falls. */
export interface ChartStep {
  readonly from: ChartBody;
  readonly to: ChartBody;
  readonly waist: number;
  readonly hip: number;
}

/** A row's values in millimeters, or undefined where the chart lacks the row or one of its cells. */
export function completeValues(chart: SizeChart, name: string): readonly number[] | undefined {
  const values = findRow(chart, name)?.values;
  const known = values?.filter((value) => value !== null);
  return known?.length === chart.sizes.length ? known : undefined;
}

/**
 * The bodies of a chart from small to large; none where waist or hip has a blank cell, since a
 * step across a gap is not a grade. Whoever drafts from the chart refuses such a gap.
 */
export function chartBodies(chart: SizeChart): ChartBody[] {
  const waists = completeValues(chart, 'waist_girth') ?? [];
  const hips = completeValues(chart, 'hip_girth') ?? [];
  return chart.sizes.flatMap((size, index) => {
    const waist = waists[index];
    const hip = hips[index];
    return waist === undefined || hip === undefined ? [] : [{ size, waist, hip }];
  });
}

/** The steps between neighboring sizes of a chart. */
export function chartSteps(chart: SizeChart): ChartStep[] {
  return neighbors(chartBodies(chart)).map(([from, to]) => ({
    from,
    to,
    waist: to.waist - from.waist,
    hip: to.hip - from.hip,
  }));
}

/** Every item with the one after it. */
export function neighbors<T>(items: readonly T[]): (readonly [T, T])[] {
  return items
    .slice(1)
    .flatMap((to, index) => items.slice(index, index + 1).map((from) => [from, to] as const));
}

/** The drop, in millimeters: what the hip has more than the waist. */
export function drop(body: ChartBody): number {
  return body.hip - body.waist;
}
