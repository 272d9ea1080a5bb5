/** A closed line that was made anew in every size, such as a cut line, as points that belong together. */
import { nearestOn } from '../geometry/nearest';
import type { Point } from '../geometry/point';
import { angleBetween, distance, subtract } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentAt, segmentLength, segmentPart, segmentTangent } from '../geometry/segment';
import { PARALLEL_TURN, SAME_LANDMARK, SAME_PLACE } from '../tolerance';
import type { GradedPoint } from './graded-stretch';
import { gradedStretch } from './graded-stretch';

/** A closed line of one size, and places on it that it has in every size, by name. */
export interface Loop {
  readonly segments: readonly Segment[];
  readonly landmarks: ReadonlyMap<string, Point>;
}

/**
 * The loop cut at its corners and landmarks, each stretch as points with a place in every size.
 * Undefined if the sizes do not have the same corners.
 */
export function gradedLoop(
  sizes: readonly Loop[],
  base: number,
): readonly GradedPoint[] | undefined {
  const names = [...(sizes[base]?.landmarks.keys() ?? [])].filter((name) =>
    sizes.every(({ segments, landmarks }) => isOn(landmarks.get(name), segments)),
  );
  const cut = sizes.map((size) => stretches(size, names));
  const model = cut[base];
  if (model === undefined || cut.some(({ length }) => length !== model.length)) return undefined;
  const alike = cut.map((own) => turnedTo(own, model));
  return model.flatMap((_, i) =>
    gradedStretch(
      alike.map((own) => own[i] ?? []),
      base,
    ),
  );
}

function isOn(at: Point | undefined, segments: readonly Segment[]): boolean {
  return at !== undefined && distance(at, placeOn(at, segments).at) <= SAME_LANDMARK;
}

interface Place {
  readonly segment: number;
  readonly t: number;
  readonly at: Point;
}

function placeOn(p: Point, segments: readonly Segment[]): Place {
  const places = segments.map((segment, i): Place => {
    const t = nearestOn(segment, p);
    return { segment: i, t, at: segmentAt(segment, t) };
  });
  return places.reduce((a, b) => (distance(b.at, p) < distance(a.at, p) ? b : a));
}

/** The stretches from each corner or landmark to the next, in the order of the loop. */
function stretches({ segments, landmarks }: Loop, names: readonly string[]) {
  const corners = segments.flatMap((segment, i): Place[] => {
    const before = segments.at(i - 1) ?? segment;
    const turn = angleBetween(segmentTangent(before, 1), segmentTangent(segment, 0));
    return turn > PARALLEL_TURN ? [{ segment: i, t: 0, at: segment.from }] : [];
  });
  const places = [...corners];
  for (const name of names) {
    const place = placeOn(landmarks.get(name) as Point, segments);
    if (places.every(({ at }) => distance(at, place.at) > SAME_LANDMARK)) places.push(place);
  }
  places.sort((a, b) => a.segment + a.t - (b.segment + b.t));
  return places.map((start, i): readonly Segment[] =>
    between(segments, start, places[(i + 1) % places.length] ?? start),
  );
}

/** The loop from one place on to another, or once round to the same. */
function between(segments: readonly Segment[], start: Place, end: Place): readonly Segment[] {
  const count = segments.length;
  const steps = (end.segment - start.segment + count) % count;
  const goesRound = steps === 0 && end.t <= start.t;
  return Array.from({ length: (goesRound ? count : steps) + 1 }, (_, k) => {
    const i = (start.segment + k) % count;
    const last = k === (goesRound ? count : steps);
    return segmentPart(segments[i] as Segment, k === 0 ? start.t : 0, last ? end.t : 1);
  }).filter((segment) => segmentLength(segment) > SAME_PLACE);
}

/** Beginning where it lies most like the model; a size is never turned by as much as a stretch. */
function turnedTo(
  own: readonly (readonly Segment[])[],
  model: readonly (readonly Segment[])[],
): readonly (readonly Segment[])[] {
  const starts = (of: typeof own): readonly Point[] => {
    const points = of.flatMap(([first]) => (first === undefined ? [] : [first.from]));
    const sum = points.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 });
    const middle = { x: sum.x / points.length, y: sum.y / points.length };
    return points.map((p) => subtract(p, middle));
  };
  const [mine, theirs] = [starts(own), starts(model)];
  const apart = (shift: number): number =>
    theirs.reduce((sum, p, i) => sum + distance(p, mine[(i + shift) % mine.length] ?? p), 0);
  const shifts = own.map((_, shift) => shift);
  const best = shifts.reduce((a, b) => (apart(b) < apart(a) ? b : a), 0);
  return [...own.slice(best), ...own.slice(0, best)];
}
