/** How often a closed loop runs round a point. */
import { cubicAt } from './cubic';
import { SAME_PLACE } from '../tolerance';
import { controlBounds, turnsAlong } from './bounds';
import { boxSearch } from './box-tree';
import type { Point } from './point';
import type { Cubic, Segment } from './segment';

/**
 * Turns of a closed loop round `p`, clockwise on paper counted positive. The loop is taken as it
 * is, without chords: a ray from `p` to the right is crossed downward once more than upward for
 * each turn.
 */
export function windingNumber(loop: readonly Segment[], p: Point): number {
  let turns = 0;
  for (const segment of loop) {
    if (segment.kind === 'line') {
      const { from, to } = segment;
      turns += passed(from.y, to.y, p.y, () => {
        return from.x + ((p.y - from.y) / (to.y - from.y)) * (to.x - from.x) > p.x;
      });
    } else turns += cubicPasses(segment, p);
  }
  return turns;
}

/** `windingNumber` for many points of one loop, looking only at what the ray of each may cross. */
export function windings(loop: readonly Segment[]): (p: Point) => number {
  const segmentsNear = boxSearch(loop, controlBounds);
  return (p) => {
    const ray = { left: p.x - SAME_PLACE, right: Infinity, top: p.y, bottom: p.y };
    const crossed = segmentsNear(ray).map((i) => loop[i] as Segment);
    return windingNumber(crossed, p);
  };
}

/** +1 for a stretch that passes the level downward to the right of the point, -1 for upward. */
function passed(start: number, end: number, level: number, toRight: () => boolean): number {
  if (start <= level === end <= level) return 0;
  if (!toRight()) return 0;
  return start <= level ? 1 : -1;
}

/** A cubic between the places where it turns round in y passes a level once at most. */
function cubicPasses(cubic: Cubic, p: Point): number {
  const { from, leave, arrive, to } = cubic;
  if (Math.max(from.y, leave.y, arrive.y, to.y) < p.y) return 0;
  if (Math.min(from.y, leave.y, arrive.y, to.y) > p.y) return 0;
  // A ray sees nothing of what is left of it, and of what is right of it only where it ends.
  if (Math.max(from.x, leave.x, arrive.x, to.x) < p.x) return 0;
  if (Math.min(from.x, leave.x, arrive.x, to.x) > p.x) return passed(from.y, to.y, p.y, () => true);
  const turns = turnsAlong(from.y, leave.y, arrive.y, to.y).sort((a, b) => a - b);
  const ends = [0, ...turns, 1];
  let sum = 0;
  ends.slice(1).forEach((end, i) => {
    const start = ends[i] ?? 0;
    const [first, last] = [place(cubic, start), place(cubic, end)];
    sum += passed(first.y, last.y, p.y, () => crossingAt(cubic, start, end, p.y) > p.x);
  });
  return sum;
}

/** The ends are taken as given, so that neighbors in a loop agree to the last digit. */
function place(cubic: Cubic, t: number): Point {
  return t === 0 ? cubic.from : t === 1 ? cubic.to : cubicAt(cubic, t);
}

/** The x at which a stretch that is monotone in y crosses a level, by bisection. */
function crossingAt(cubic: Cubic, start: number, end: number, level: number): number {
  let [low, high] = [start, end];
  const startsAbove = place(cubic, start).y <= level;
  for (let i = 0; i < 52; i++) {
    const middle = (low + high) / 2;
    if (cubicAt(cubic, middle).y <= level === startsAbove) low = middle;
    else high = middle;
  }
  return cubicAt(cubic, low).x;
}
