/** One piece in its base size, with the moves of its points to all other sizes as arrows of any length. */
import { grownBox, pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, distance, point, scale, subtract } from '../geometry/point';
import type { Piece } from '../pattern/piece';
import { outlineSegments } from '../pattern/piece';
import { SAME_POINT_STEP } from '../tolerance';
import { HEAD_LENGTH, arrowHead } from './arrows';
import { spelled } from './captions';
import type { Chord } from './chords';
import { chordsOf, clearOf, flattened } from './chords';
import { obstacles } from './obstacles';
import type { Shape, Stroke } from './scene';
import { circle, polyline } from './scene';
import { INK, SOFT_INK, sizeStyle } from './size-style';
import type { Sketch } from './sketch';
import { sketchOf } from './sketch';
import { text, textBox } from './type';

/** Told apart by color and by dash, as sizes are. */
export const TO_LARGER: Stroke = { color: sizeStyle(0, false).outline.color, width: 0.7 };
/** The moves to smaller sizes. */
export const TO_SMALLER: Stroke = {
  ...{ color: sizeStyle(1, false).outline.color, width: 0.7 },
  dash: [4, 2],
};
/** The piece itself. */
export const BASE_LINE: Stroke = { color: INK, width: 0.35 };

/** mm. Type of the piece's name and of its points', rings at sizes and at points that stay. */
const [NAME, LABEL, RING, STILL] = [9, 6, 1.1, 1.6];
/** mm. A smaller ring is none on paper. No tolerance: it draws. */
const LEAST_RING = 0.35;
/** Share of a usual arrowhead. No tolerance: it draws. */
const HEAD = 0.55;

/** A piece in its base size, and the move in mm of each point to each size, the base's zero. */
export interface MovedPoints {
  readonly piece: Piece;
  /** `moves[size][point]`, smallest size first. */
  readonly moves: readonly (readonly Point[])[];
  /** Rank of the base. */
  readonly base: number;
}

/** The points of a piece that have arrows, or a ring where they stay: all but handles. */
export function arrowPoints({ piece: { plan, points }, moves }: MovedPoints) {
  return plan.pointNames.flatMap((name, i) => {
    const at = points[i];
    if (at === undefined || plan.handles.has(name)) return [];
    return [{ name, at, moves: moves.map((size) => size[i] ?? point(0, 0)) }];
  });
}

/**
 * The piece with its arrows, each `times` as long as the move that it stands for, and names of what moves;
 * `unnamed` are the points for whose names there is no room.
 */
export function moveArrows(
  moved: MovedPoints,
  times: number,
): Sketch & { readonly unnamed: number } {
  const { piece, base } = moved;
  const outline = outlineSegments(piece);
  const drawn = arrowPoints(moved).map(({ name, at, moves }) => {
    const places = moves.map((move) => add(at, scale(move, times)));
    const isStill = moves.every((move) => distance(move, point(0, 0)) < SAME_POINT_STEP);
    return { name, at, places, isStill };
  });
  const arrows = drawn.flatMap(({ at, places, isStill }): readonly Shape[] =>
    isStill
      ? [circle('still', at, STILL, { color: SOFT_INK, width: 0.35 })]
      : [
          ...chainOf(places.slice(base), TO_LARGER),
          ...chainOf(places.slice(0, base + 1).toReversed(), TO_SMALLER),
        ],
  );
  const lines = [...chordsOf([flattened(outline)]), ...obstacles(arrows)];
  const box = pointBounds([
    ...outline.flatMap(({ from, to }) => [from, to]),
    ...drawn.flatMap(({ places }) => places),
  ]);
  const moving = drawn.filter(({ isStill }) => !isStill);
  const names = labels(moving, lines);
  const sketch = sketchOf([
    text(spelled(piece.plan.name), point(box.left, box.top - NAME), NAME, { weight: 'bold' }),
    { kind: 'path', part: 'outline', segments: outline, closed: true, stroke: BASE_LINE },
    ...arrows,
    ...names,
  ]);
  return { ...sketch, unnamed: moving.length - names.length };
}

/** From the base outward through every size, a ring at each and a head at the last. */
function chainOf(places: readonly Point[], stroke: Stroke): readonly Shape[] {
  const [from, ...others] = places;
  const last = others.at(-1);
  if (from === undefined || last === undefined) return [];
  const { color } = stroke;
  const shortest = Math.min(...others.map((at, i) => distance(places[i] ?? at, at)));
  // Rings that would touch make a bar in which no size is seen.
  const radius = Math.min(RING, shortest / 3);
  const rings = others
    .slice(0, radius < LEAST_RING ? 0 : -1)
    .map((at) => circle('size', at, radius, { color, width: radius / 3 }));
  // A move that comes back to where it was has its head along its last step that leads anywhere.
  const before = places.findLast((at) => distance(at, last) > RING) ?? from;
  const long = distance(before, last);
  if (long === 0) return [polyline('move', places, stroke), ...rings];
  const share = Math.min(HEAD, long / (2 * HEAD_LENGTH));
  return [
    polyline('move', places, stroke),
    ...rings,
    arrowHead(last, subtract(last, before), share, color),
  ];
}

/** mm that a name keeps from any line. */
const CLEAR = 0.8;
/** Distances in mm from a point to the middle of its name that are tried, and directions for each. */
const [AWAY, WAYS] = [[6, 11, 17, 24, 32], 16];

/** The names of points, each at the nearest place where no line and no other name runs through it. */
function labels(
  points: readonly {
    readonly name: string;
    readonly at: Point;
    readonly places: readonly Point[];
  }[],
  lines: readonly Chord[],
): readonly Shape[] {
  const taken = [...lines];
  return points.flatMap(({ name, at, places }) => {
    const isFree = clearOf(taken);
    const words = name.replaceAll('_', ' ');
    // Away from where most of its arrows point.
    const toward = places.reduce((sum, place) => add(sum, subtract(at, place)), point(0, 0));
    const start = Math.atan2(toward.y, toward.x);
    const tried = AWAY.flatMap((away) =>
      Array.from({ length: WAYS }, (_, k) => {
        const turn = Math.ceil(k / 2) * (k % 2 === 0 ? 1 : -1);
        const angle = start + (2 * Math.PI * turn) / WAYS;
        const anchor = Math.cos(angle) < 0 ? ('end' as const) : ('start' as const);
        const spot = point(
          at.x + away * Math.cos(angle),
          at.y + away * Math.sin(angle) + LABEL / 3,
        );
        return text(words, spot, LABEL, { anchor });
      }),
    );
    const label = tried.find((own) => isFree(grownBox(textBox(own), CLEAR)));
    if (label === undefined) return [];
    taken.push(...obstacles([label]));
    return [label];
  });
}
