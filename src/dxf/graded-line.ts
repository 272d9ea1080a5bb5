/** Lines of a piece in all sizes as points that belong together, one list a size. */
import type { CubicPoints } from '../geometry/cubic';
import { cubicAt } from '../geometry/cubic';
import { distanceToCubic } from '../geometry/nearest';
import type { Point } from '../geometry/point';
import { distance } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { splineHandles } from '../geometry/spline';
import { CURVE_POINTS } from '../tolerance';

/** A point of a line: at a turn of it, or on a curve, with its place in every size. */
export interface GradedPoint {
  readonly kind: 'turn' | 'curve';
  readonly at: readonly Point[];
}

/**
 * A closed line given as segments in each size, all alike in number and kind. Curves become points
 * at equal parameters, as many as it takes for the natural spline through them to be the curve in
 * the base size within CURVE_POINTS. Undefined if the sizes are not alike.
 */
export function gradedLine(
  sizes: readonly (readonly Segment[])[],
  base: number,
): readonly GradedPoint[] | undefined {
  const model = sizes[base] ?? [];
  const alike = sizes.every(
    (segments) =>
      segments.length === model.length && segments.every(({ kind }, i) => kind === model[i]?.kind),
  );
  if (!alike) return undefined;
  return model.flatMap((segment, i): GradedPoint[] => {
    const own = sizes.map((segments) => segments[i] ?? segment);
    const turn: GradedPoint = { kind: 'turn', at: own.map(({ from }) => from) };
    if (segment.kind === 'line') return distance(segment.from, segment.to) === 0 ? [] : [turn];
    const count = spansFor(segment);
    const inner = Array.from({ length: count - 1 }, (_, k): GradedPoint => {
      const t = (k + 1) / count;
      return {
        kind: 'curve',
        at: own.map((s) => (s.kind === 'cubic' ? cubicAt(s, t) : s.from)),
      };
    });
    return [turn, ...inner];
  });
}

/** Spans of a curve that are tried, each twice the one before. */
const FEWEST = 4;
const MOST = 256;

function spansFor(cubic: CubicPoints): number {
  for (let count = FEWEST; count < MOST; count *= 2) {
    if (splineMisses(cubic, count) <= CURVE_POINTS) return count;
  }
  return MOST;
}

/** mm by which the natural spline through points of a cubic leaves it, between points. */
function splineMisses(cubic: CubicPoints, count: number): number {
  const points = Array.from({ length: count + 1 }, (_, k) => cubicAt(cubic, k / count));
  const spans = points.slice(1).map((to, i) => distance(points[i] ?? to, to));
  if (spans.some((span) => span === 0)) return Infinity;
  const handles = splineHandles(points, spans);
  // Where the spline has no curvature and the cubic has, at its ends, it leaves it most.
  return Math.max(
    ...[0, 1, count - 2, count - 1].map((i) => {
      const [from, to] = [points[i], points[i + 1]];
      const [leave, arrive] = [handles[2 * i], handles[2 * i + 1]];
      if (!from || !to || !leave || !arrive) return 0;
      return distanceToCubic(cubic, cubicAt({ from, leave, arrive, to }, 0.5));
    }),
  );
}
