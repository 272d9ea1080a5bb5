/** The curve points of a line that go without a rule, since those of their neighbors already move them. */
import { cubicLength } from '../geometry/cubic';
import type { Point } from '../geometry/point';
import { add, between, distance, subtract } from '../geometry/point';
import { splineHandles } from '../geometry/spline';
import { FOLLOWED } from '../tolerance';
import type { GradedPoint } from './graded-stretch';

/**
 * The points of a closed line that a reader finds again in every size without a rule: they move between the
 * ruled points before and after them by their share of the way, as points without a rule do. A point at
 * which `isShared`, where another line or a notch has its rule, keeps its own, so that none is taken for
 * the other's.
 */
export function followedPoints(
  line: readonly GradedPoint[],
  base: number,
  isShared: (at: Point) => boolean,
): ReadonlySet<GradedPoint> {
  const turns = line.flatMap(({ kind }, i) => (kind === 'turn' ? [i] : []));
  return new Set(
    turns.flatMap((from, t) => {
      const to = turns[t + 1] ?? (turns[0] ?? 0) + line.length;
      const points = Array.from(
        { length: to - from + 1 },
        (_, k) => line[(from + k) % line.length] as GradedPoint,
      );
      return followedOn({ points, along: lengthsAlong(points, base), base, isShared });
    }),
  );
}

/** A line from turn to turn, and how far in mm along it each of its points lies in the base. */
interface Stretch {
  readonly points: readonly GradedPoint[];
  readonly along: readonly number[];
  readonly base: number;
  readonly isShared: (at: Point) => boolean;
}

function followedOn(stretch: Stretch): readonly GradedPoint[] {
  const { points, base, isShared } = stretch;
  const last = points.length - 1;
  const ruled = points.flatMap(({ at }, i) =>
    i === 0 || i === last || isShared(at[base] as Point) ? [i] : [],
  );
  return ruled.slice(1).flatMap((to, k) => followedBetween(stretch, ruled[k] ?? 0, to));
}

/** All points between two that have rules, or those that are left once the farthest off has one, too. */
function followedBetween(stretch: Stretch, from: number, to: number): readonly GradedPoint[] {
  let [worst, most] = [from, 0];
  for (let i = from + 1; i < to; i++) {
    const off = missBy(stretch, i, from, to);
    if (off > most) [worst, most] = [i, off];
  }
  if (most <= FOLLOWED) return stretch.points.slice(from + 1, to);
  return [...followedBetween(stretch, from, worst), ...followedBetween(stretch, worst, to)];
}

/** mm, in the size in which it is most, by which a point does not lie where its neighbors move it. */
function missBy({ points, along, base }: Stretch, i: number, from: number, to: number): number {
  const [start = 0, own = 0, end = 0] = [along[from], along[i], along[to]];
  const share = (own - start) / (end - start);
  const move = (point: number, size: number): Point => {
    const at = points[point]?.at ?? [];
    return subtract(at[size] as Point, at[base] as Point);
  };
  const zero = points[i]?.at[base] as Point;
  const off = points[i]?.at.map((at, size) =>
    distance(at, add(zero, between(move(from, size), move(to, size), share))),
  );
  return Math.max(...(off ?? []));
}

/** Along the natural spline through the points, which on a straight line is that line. */
function lengthsAlong(points: readonly GradedPoint[], base: number): readonly number[] {
  const places = points.map(({ at }) => at[base] as Point);
  const spans = places.slice(1).map((to, i) => distance(places[i] as Point, to));
  const handles = splineHandles(places, spans);
  let length = 0;
  return [
    0,
    ...spans.map((_, i) => {
      const [from, to] = [places[i] as Point, places[i + 1] as Point];
      const [leave, arrive] = [handles[2 * i] as Point, handles[2 * i + 1] as Point];
      return (length += cubicLength({ from, leave, arrive, to }));
    }),
  ];
}
