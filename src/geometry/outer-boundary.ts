/** The outer boundary of a loop that crosses itself, as raw parallels at a tight corner do. */
import { BESIDE_LINE, COMPUTED_PLACE, SAME_PLACE } from '../tolerance';
import type { Box } from './bounds';
import { grownBox, pointBounds, segmentBounds } from './bounds';
import { boxSearch } from './box-tree';
import { crossings } from './crossings';
import { loopArea } from './loop';
import type { Point } from './point';
import { add, distance, dot, quarterTurn, scale, subtract, unit } from './point';
import type { Segment } from './segment';
import { controlPoints, segmentAt, segmentPart, segmentTangent } from './segment';
import { windings } from './winding';

/**
 * The boundary of all that a clockwise loop runs round at least once, as a clockwise loop. Stretches
 * that run backward and loops that turn the other way vanish. A loop that does not cross itself
 * comes back as it is, and so does one whose parts make no closed boundary.
 */
export function outerBoundary(loop: readonly Segment[]): readonly Segment[] {
  const cuts = selfCrossings(loop);
  if (cuts.every((parameters) => parameters.length === 0)) return loop;
  const parts = loop.flatMap((segment, i) => split(segment, cuts[i] ?? []));
  const turnsRound = windings(loop);
  const kept = parts.filter((part) => {
    const middle = segmentAt(part, 0.5);
    const inward = scale(quarterTurn(unit(segmentTangent(part, 0.5))), BESIDE_LINE);
    return turnsRound(add(middle, inward)) > 0 && turnsRound(add(middle, scale(inward, -1))) <= 0;
  });
  const closed = loopsOf(kept);
  return closed.reduce(
    (most, next) => (loopArea(next) > loopArea(most) ? next : most),
    closed[0] ?? loop,
  );
}

/** For each segment its parameters at which another one crosses it, joints left out. */
function selfCrossings(loop: readonly Segment[]): readonly (readonly number[])[] {
  const cuts: number[][] = loop.map(() => []);
  const boxes = loop.map(segmentBounds);
  const segmentsNear = boxSearch(boxes, (box) => box);
  loop.forEach((a, i) => {
    for (const k of segmentsNear(boxes[i] as Box)) {
      const b = loop[k] as Segment;
      if (k <= i || (k === i + 1 && onlyJoined(a, b))) continue;
      for (const { t, u, at } of crossings(a, b)) {
        const joint =
          (k === i + 1 && near(at, a.to)) || (i === 0 && k === loop.length - 1 && near(at, a.from));
        if (joint) continue;
        cuts[i]?.push(t);
        cuts[k]?.push(u);
      }
    }
  });
  return cuts;
}

/** Whether a line through the joint of `a` and `b` surely parts all else of them. */
function onlyJoined(a: Segment, b: Segment): boolean {
  const joint = a.to;
  if (!near(joint, b.from)) return false;
  const on = add(unit(segmentTangent(a, 1)), unit(segmentTangent(b, 0)));
  const ahead = (p: Point): number => dot(subtract(p, joint), on);
  const [before, after] = [controlPoints(a).slice(0, -1), controlPoints(b).slice(1)];
  return before.every((p) => ahead(p) < 0) && after.every((p) => ahead(p) > 0);
}

function near(a: Point, b: Point): boolean {
  return distance(a, b) <= SAME_PLACE;
}

function split(segment: Segment, cuts: readonly number[]): readonly Segment[] {
  const ends = [0, ...cuts.toSorted((a, b) => a - b), 1];
  return ends
    .slice(1)
    .map((end, i) => segmentPart(segment, ends[i] ?? 0, end))
    .filter(({ from, to }) => !near(from, to));
}

/** Puts parts end to end; what does not close is left out. */
function loopsOf(parts: readonly Segment[]): readonly (readonly Segment[])[] {
  const left = new Set(parts);
  const startsNear = boxSearch(parts, ({ from }) => pointBounds([from]));
  const following = (end: Point): readonly Segment[] =>
    startsNear(grownBox(pointBounds([end]), COMPUTED_PLACE))
      .map((i) => parts[i] as Segment)
      .filter((part) => left.has(part));
  const loops: (readonly Segment[])[] = [];
  for (const first of parts) {
    if (!left.delete(first)) continue;
    const chain = [first];
    let end = first.to;
    while (distance(end, first.from) > COMPUTED_PLACE) {
      const next = nearest(following(end), end);
      if (next === undefined) break;
      left.delete(next);
      chain.push(next);
      end = next.to;
    }
    if (distance(end, first.from) <= COMPUTED_PLACE) loops.push(chain);
  }
  return loops;
}

function nearest(parts: readonly Segment[], end: Point): Segment | undefined {
  let best: Segment | undefined;
  for (const part of parts) {
    const gap = distance(part.from, end);
    if (gap <= COMPUTED_PLACE && (best === undefined || gap < distance(best.from, end)))
      best = part;
  }
  return best;
}
