/** B-splines as cubic curves, exactly. */
import type { Point } from '../geometry/point';
import { angleBetween, between, subtract } from '../geometry/point';
import { SPLINE_RUNS_ON } from '../tolerance';
import type { LinePoint } from './line-point';

/** A curve by control points, not rational. */
export interface BSpline {
  readonly degree: number;
  readonly knots: readonly number[];
  readonly controls: readonly Point[];
}

/**
 * The points at which its stretches meet, each with the handles of the next; the last one without.
 * Undefined for a degree other than 1, 2 and 3 or for knots that do not fit.
 */
export function splinePoints({ degree, knots, controls }: BSpline): LinePoint[] | undefined {
  const count = controls.length;
  const fits =
    [1, 2, 3].includes(degree) &&
    count > degree &&
    knots.length === count + degree + 1 &&
    knots.every((knot, i) => i === 0 || knot >= (knots[i - 1] ?? 0));
  if (!fits) return undefined;
  const stretches: (readonly Point[])[] = [];
  for (let i = degree; i < count; i++) {
    const [a, b] = [knots[i] as number, knots[i + 1] as number];
    if (a === b) continue;
    stretches.push(
      Array.from({ length: degree + 1 }, (_, k) => {
        const places = Array.from({ length: degree }, (__, j) => (j < degree - k ? a : b));
        return blossom({ degree, knots, controls }, i, places);
      }),
    );
  }
  const last = stretches.at(-1)?.at(-1);
  if (last === undefined) return undefined;
  return [
    ...stretches.map((stretch, i): LinePoint => {
      const bend = handles(stretch);
      const before = stretches[i - 1];
      const inner = before !== undefined && runsOn(before, stretch);
      return { ...(stretch[0] as Point), ...(bend && { bend }), ...(inner && { inner: true }) };
    }),
    last,
  ];
}

/** The polar form of the stretch between knots `i` and `i + 1`, of as many places as the degree. */
function blossom({ degree, knots, controls }: BSpline, i: number, places: readonly number[]) {
  let row = controls.slice(i - degree, i + 1);
  places.forEach((u, r) => {
    row = row.slice(1).map((right, k) => {
      const j = i - degree + r + 1 + k;
      const [low, high] = [knots[j] as number, knots[j + degree - r] as number];
      return between(row[k] as Point, right, (u - low) / (high - low));
    });
  });
  return row[0] as Point;
}

function handles(stretch: readonly Point[]): readonly [Point, Point] | undefined {
  const [a, b, c, d] = stretch as readonly [Point, Point, Point?, Point?];
  if (c === undefined) return undefined;
  return d === undefined ? [between(a, b, 2 / 3), between(c, b, 2 / 3)] : [b, c];
}

function runsOn(before: readonly Point[], after: readonly Point[]): boolean {
  const arriving = subtract(before.at(-1) as Point, before.at(-2) as Point);
  const leaving = subtract(after[1] as Point, after[0] as Point);
  return before.length > 2 && angleBetween(arriving, leaving) <= SPLINE_RUNS_ON;
}
