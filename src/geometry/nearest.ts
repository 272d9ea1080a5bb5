/** The distance of a point from a line or curve. */
import { SAME_PLACE } from '../tolerance';
import type { CubicPoints } from './cubic';
import { cubicAt, cubicBend, cubicTangent } from './cubic';
import type { Point } from './point';
import { distance, dot, subtract } from './point';
import type { Segment } from './segment';
import { segmentAt } from './segment';

/** Places tried before the nearest of them is refined; gentle curves come near a point once. */
const PLACES = 24;
/** Steps that halve what is left at least, and mostly do far better. */
const STEPS = 40;

/** mm from `p` to the nearest point of a cubic, its ends included. */
export function distanceToCubic(cubic: CubicPoints, p: Point): number {
  return distance(cubicAt(cubic, nearestOnCubic(cubic, p)), p);
}

/** The parameter of the point of a segment that is nearest to `p`, 0 or 1 at an end. */
export function nearestOn(segment: Segment, p: Point): number {
  if (segment.kind === 'cubic') return nearestOnCubic(segment, p);
  const along = subtract(segment.to, segment.from);
  const square = dot(along, along);
  const t = square === 0 ? 0 : dot(subtract(p, segment.from), along) / square;
  return Math.min(1, Math.max(0, t));
}

/** mm from `p` to the nearest point of a segment, its ends included. */
export function distanceToSegment(segment: Segment, p: Point): number {
  return distance(segmentAt(segment, nearestOn(segment, p)), p);
}

/** The square of the distance from `p` to a place of a cubic, as cubicAt has it, but without a point. */
function squareAway({ from, leave, arrive, to }: CubicPoints, p: Point, t: number): number {
  const s = 1 - t;
  const a = s * s * s;
  const b = 3 * s * s * t;
  const c = 3 * s * t * t;
  const d = t * t * t;
  const x = a * from.x + b * leave.x + c * arrive.x + d * to.x - p.x;
  const y = a * from.y + b * leave.y + c * arrive.y + d * to.y - p.y;
  return x * x + y * y;
}

function nearestOnCubic(cubic: CubicPoints, p: Point): number {
  let nearest = 0;
  let least = squareAway(cubic, p, nearest);
  for (let i = 1; i <= PLACES; i++) {
    const gap = squareAway(cubic, p, i / PLACES);
    if (gap >= least) continue;
    nearest = i / PLACES;
    least = gap;
  }
  // Where the curve is nearest, the way to the point stands square to it: by Newton's method, kept
  // inside a shrinking bracket. A step shorter than SAME_PLACE leaves far less than that.
  let low = Math.max(0, nearest - 1 / PLACES);
  let high = Math.min(1, nearest + 1 / PLACES);
  let t = nearest;
  for (let i = 0; i < STEPS; i++) {
    const way = subtract(p, cubicAt(cubic, t));
    const speed = cubicTangent(cubic, t);
    const ahead = dot(way, speed);
    if (ahead > 0) low = t;
    else high = t;
    const square = dot(speed, speed);
    const newton = t + ahead / (square - dot(way, cubicBend(cubic, t)));
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const step = Math.abs(next - t) * Math.sqrt(square);
    t = next;
    if (step <= SAME_PLACE) break;
  }
  return least < squareAway(cubic, p, t) ? nearest : t;
}
