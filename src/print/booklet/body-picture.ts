/** Where a body is measured: a figure from below the ribs to the knee, with the lines of the tape. */
import type { Point } from '../../geometry/point';
import { point } from '../../geometry/point';
import type { Shape, Stroke } from '../../render/scene';
import { polyline } from '../../render/scene';
import { INK, SOFT_INK } from '../../render/size-style';
import type { Sketch } from '../../render/sketch';
import { sketchOf } from '../../render/sketch';
import { text } from '../../render/type';

/** mm on paper. */
const FIGURE: Stroke = { color: SOFT_INK, width: 0.5 };
const TAPE: Stroke = { color: INK, width: 0.4 };
const SCALE = 0.1;
const TYPE = 2.8;
const BESIDE = 6;

/** A body in mm. */
export interface MeasuredBody {
  readonly waist: number;
  readonly hip: number;
  readonly waistToHip: number;
}

/** Seen from the front a girth is about a third as wide as it is long (from memory; only for the eye). */
const SEEN = 0.34;
/** Levels below the waist in parts of the waist to hip, and widths between waist and hip, for the eye. */
const FIGURE_LINE: readonly (readonly [level: number, width: (b: MeasuredBody) => number])[] = [
  [-0.6, ({ waist, hip }) => waist + 0.15 * (hip - waist)],
  [0, ({ waist }) => waist],
  [0.45, ({ waist, hip }) => waist + 0.72 * (hip - waist)],
  [1, ({ hip }) => hip],
  [1.6, ({ hip }) => 0.97 * hip],
  [2.6, ({ hip }) => 0.84 * hip],
];

/** The figure, with what each letter means left to the words beside it. */
export function bodyPicture(body: MeasuredBody): Sketch {
  const at = (level: number, width: number): Point =>
    point((SCALE * SEEN * width) / 2, SCALE * level * body.waistToHip);
  const side = smooth(FIGURE_LINE.map(([level, width]) => at(level, width(body))));
  const waist = at(0, body.waist);
  const hip = at(1, body.hip);
  const beyond = hip.x + BESIDE;
  const tape = (level: Point, letter: string): readonly Shape[] => [
    polyline('tape', [point(-level.x, level.y), level], TAPE),
    text(letter, point(-beyond, level.y + TYPE / 3), TYPE, { weight: 'bold', anchor: 'end' }),
  ];
  const crotch = at(1.45, 0);
  return sketchOf([
    polyline('figure', side, FIGURE),
    polyline(
      'figure',
      side.map(({ x, y }) => point(-x, y)),
      FIGURE,
    ),
    polyline('figure', [point(0, crotch.y), point(0, side.at(-1)?.y ?? 0)], FIGURE),
    ...tape(waist, 'W'),
    ...tape(hip, 'H'),
    polyline('tape', [point(beyond, waist.y), point(beyond, hip.y)], TAPE),
    ...[waist, hip].map(({ y }) =>
      polyline('tape', [point(beyond - 1.2, y), point(beyond + 1.2, y)], TAPE),
    ),
    text('D', point(beyond + 2, (waist.y + hip.y + TYPE) / 2), TYPE, { weight: 'bold' }),
  ]);
}

/** Places on a curve between two points of the figure. */
const PLACES = 8;

/** A smooth line through points from top to bottom, its slopes those of their neighbors. */
function smooth(points: readonly Point[]): readonly Point[] {
  const slope = (i: number): number => {
    const [a, b] = [points[Math.max(0, i - 1)], points[Math.min(points.length - 1, i + 1)]];
    return a === undefined || b === undefined ? 0 : (b.x - a.x) / (b.y - a.y);
  };
  return points.slice(1).flatMap((to, i) => {
    const from = points[i] ?? to;
    const long = to.y - from.y;
    return Array.from({ length: PLACES + 1 }, (_, k) => {
      const t = k / PLACES;
      // Hermite's cubic between the two, by its slopes.
      const x =
        from.x * (1 + 2 * t) * (1 - t) ** 2 +
        to.x * t ** 2 * (3 - 2 * t) +
        long * (slope(i) * t * (1 - t) ** 2 - slope(i + 1) * t ** 2 * (1 - t));
      return point(x, from.y + long * t);
    });
  });
}
