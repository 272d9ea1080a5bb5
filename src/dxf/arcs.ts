/** Arcs of circles and ellipses, and bulges, as cubic curves. */
import type { Point } from '../geometry/point';
import { add, between, distance, scale, subtract } from '../geometry/point';
import { ARITHMETIC, NO_BULGE } from '../tolerance';
import type { LinePoint } from './line-point';

/**
 * radians. A cubic for 30 degrees of an arc leaves it by 3.8e-7 of the radius: 2/27 sin^6(a/4) /
 * cos^2(a/4). That is below CURVE_POINTS up to a radius of 10 m.
 */
const STEP = Math.PI / 6;

/** center + cos(angle) u + sin(angle) v: a circle where u and v are square and as long. */
export interface Round {
  readonly center: Point;
  readonly u: Point;
  readonly v: Point;
}

/** The points of an arc from angle to angle in radians, its last one without a bend. */
export function arcPoints({ center, u, v }: Round, start: number, end: number): LinePoint[] {
  const count = Math.max(1, Math.ceil(Math.abs(end - start) / STEP - ARITHMETIC));
  const step = (end - start) / count;
  const reach = (4 / 3) * Math.tan(step / 4);
  const at = (angle: number): Point =>
    add(center, add(scale(u, Math.cos(angle)), scale(v, Math.sin(angle))));
  const way = (angle: number): Point =>
    scale(add(scale(u, -Math.sin(angle)), scale(v, Math.cos(angle))), reach);
  return Array.from({ length: count + 1 }, (_, i): LinePoint => {
    const [here, next] = [start + i * step, start + (i + 1) * step];
    if (i === count) return at(here);
    const bend = [add(at(here), way(here)), subtract(at(next), way(next))] as const;
    return { ...at(here), bend, ...(i > 0 && { inner: true as const }) };
  });
}

/** The points of a whole circle or ellipse, closed: the last is not the first once more. */
export function roundPoints(round: Round): LinePoint[] {
  return arcPoints(round, 0, 2 * Math.PI).slice(0, -1);
}

/**
 * The arc from point to point, without its last point. `bulge` is the tangent of a quarter of its
 * angle, positive where the way turns from +x to +y.
 */
export function bulgePoints(from: Point, to: Point, bulge: number): LinePoint[] {
  const chord = subtract(to, from);
  const long = distance(from, to);
  // Flatter than any pencil sees, its center would be farther away than numbers reach.
  if (long === 0 || Math.abs(bulge) < NO_BULGE) return [from];
  const aside = (1 - bulge * bulge) / (4 * bulge);
  const center = add(between(from, to, 0.5), scale({ x: -chord.y, y: chord.x }, aside));
  const u = subtract(from, center);
  const points = arcPoints({ center, u, v: { x: -u.y, y: u.x } }, 0, 4 * Math.atan(bulge));
  return [{ ...points[0], ...from }, ...points.slice(1, -1)];
}
