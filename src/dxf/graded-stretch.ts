/** A smooth stretch of a line in all its sizes as points that belong together. */
import { cubicAt, cubicParameterAtLength } from '../geometry/cubic';
import { distanceToSegment } from '../geometry/nearest';
import type { Point } from '../geometry/point';
import { distance } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentAt, segmentLength } from '../geometry/segment';
import { splineHandles } from '../geometry/spline';
import { CURVE_POINTS } from '../tolerance';

/** A point of a line: at a turn of it, or on a curve, with its place in every size. */
export interface GradedPoint {
  readonly kind: 'turn' | 'curve';
  readonly at: readonly Point[];
}

/** Segments that run on without a corner, with the lengths to their ends. */
interface Chain {
  readonly segments: readonly Segment[];
  /** mm from the start of the chain to the end of each segment. */
  readonly ends: readonly number[];
}

/** Spans that are tried for a curve, each number twice the one before. */
const FEWEST = 4;
const MOST = 256;

/**
 * The points of a stretch without its last one; the first is a turn. Where it is curved in any size
 * they stand at equal shares of its length, as many as it takes for the natural spline through them
 * to be the stretch within CURVE_POINTS in the base and in the first and last size. A spline counts
 * its spans as they are in the base, since that is how it is graded.
 */
export function gradedStretch(
  sizes: readonly (readonly Segment[])[],
  base: number,
): readonly GradedPoint[] {
  const chains = sizes.map(chainOf);
  const tried = [...new Set([base, 0, sizes.length - 1])];
  const isStraight = chains.every(({ segments }) => segments.every(({ kind }) => kind === 'line'));
  let count = isStraight ? 1 : FEWEST;
  let points = chains.map((chain) => pointsOn(chain, count));
  const misses = (): boolean =>
    tried.some((i) => {
      const [chain, own, model] = [chains[i], points[i], points[base]];
      return chain && own && model && splineMisses(chain, own, model) > CURVE_POINTS;
    });
  while (count < MOST && misses()) {
    count *= 2;
    points = chains.map((chain) => pointsOn(chain, count));
  }
  return Array.from({ length: count }, (_, k) => ({
    kind: k === 0 ? 'turn' : 'curve',
    at: points.flatMap((own) => own[k] ?? []),
  }));
}

function chainOf(segments: readonly Segment[]): Chain {
  let end = 0;
  return { segments, ends: segments.map((segment) => (end += segmentLength(segment))) };
}

/** `count` + 1 points at equal shares of the length of a chain. */
function pointsOn({ segments, ends }: Chain, count: number): readonly Point[] {
  const whole = ends.at(-1) ?? 0;
  let i = 0;
  return Array.from({ length: count + 1 }, (_, k) => {
    const target = (whole * k) / count;
    while (i + 1 < segments.length && (ends[i] ?? 0) < target) i++;
    const segment = segments[i] as Segment;
    if (k === count) return segment.to;
    const into = target - (ends[i - 1] ?? 0);
    if (segment.kind === 'cubic') return cubicAt(segment, cubicParameterAtLength(segment, into));
    return segmentAt(segment, into / distance(segment.from, segment.to));
  });
}

/** mm by which the natural spline through points of a chain leaves it, half-way between points. */
function splineMisses(
  { segments, ends }: Chain,
  points: readonly Point[],
  model: readonly Point[],
): number {
  const spans = model.slice(1).map((to, i) => distance(model[i] ?? to, to));
  if (spans.some((span) => span === 0)) return Infinity;
  const handles = splineHandles(points, spans);
  const span = (ends.at(-1) ?? 0) / spans.length;
  return spans.reduce((worst, _, i) => {
    const [from, to] = [points[i], points[i + 1]];
    const [leave, arrive] = [handles[2 * i], handles[2 * i + 1]];
    if (!from || !to || !leave || !arrive) return worst;
    const middle = cubicAt({ from, leave, arrive, to }, 0.5);
    const near = segments.filter(
      (_segment, s) => (ends[s] ?? 0) >= i * span - 1 && (ends[s - 1] ?? 0) <= (i + 1) * span + 1,
    );
    return Math.max(worst, Math.min(...near.map((segment) => distanceToSegment(segment, middle))));
  }, 0);
}
