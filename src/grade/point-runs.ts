/** The steps of each point from size to size, gathered into runs of the same step; where one ends is a break. */
import { SAME_POINT_STEP } from '../tolerance';
import type { GradedPattern } from './graded-pattern';

/** Neighboring steps of a point along one axis that are the same. */
export interface PointRun {
  readonly piece: string;
  readonly point: string;
  readonly axis: 'x' | 'y';
  /** Ranks of the first and the last of the sizes. */
  readonly from: number;
  readonly to: number;
  /** mm that the point moves from each size to the next larger one: the mean of the steps, the least, the most. */
  readonly step: number;
  readonly least: number;
  readonly most: number;
}

/**
 * The runs of every point that a rule can move, axis by axis, from the smallest size to the largest; an
 * axis along which a point never moves has none, and neither has a handle of a curve. Steps count as the
 * same as long as none of a run is farther than `SAME_POINT_STEP` from another. A blend is no size of the
 * range.
 */
export function pointRuns({
  plans,
  rules,
  sizes,
  blend,
}: Pick<GradedPattern, 'plans' | 'rules' | 'sizes' | 'blend'>): readonly PointRun[] {
  const count = sizes.filter(({ label }) => label !== blend).length;
  return plans.flatMap(({ name: piece, pointNames, handles }, p) =>
    pointNames.flatMap((point, i) =>
      (['x', 'y'] as const).flatMap((axis) => {
        const steps = pointSteps(rules, count, { piece: p, point: i }, axis);
        const isStill = steps.every((step) => Math.abs(step) < SAME_POINT_STEP);
        return handles.has(point) || isStill
          ? []
          : runsOf(steps).map((run) => ({ piece, point, axis, ...run }));
      }),
    ),
  );
}

/** mm that a point, by its places, moves along an axis from each of `count` sizes to the next larger one. */
export function pointSteps(
  { moves }: GradedPattern['rules'],
  count: number,
  { piece, point }: { readonly piece: number; readonly point: number },
  axis: 'x' | 'y',
): readonly number[] {
  const at = (size: number): number => moves[size]?.[piece]?.[point]?.[axis] ?? NaN;
  return Array.from({ length: count - 1 }, (_, size) => at(size + 1) - at(size));
}

function runsOf(steps: readonly number[]): readonly Omit<PointRun, 'piece' | 'point' | 'axis'>[] {
  const runs: { from: number; steps: number[] }[] = [];
  steps.forEach((step, i) => {
    const last = runs.at(-1);
    if (last?.steps.every((other) => Math.abs(other - step) < SAME_POINT_STEP))
      last.steps.push(step);
    else runs.push({ from: i, steps: [step] });
  });
  return runs.map(({ from, steps: own }) => ({
    from,
    to: from + own.length,
    step: own.reduce((sum, step) => sum + step, 0) / own.length,
    least: Math.min(...own),
    most: Math.max(...own),
  }));
}
