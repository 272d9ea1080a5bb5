/** What stands at a place of a block: marks, rule numbers, lines that pass it. */
import type { Point } from '../geometry/point';
import { cross, distance, dot, length, subtract } from '../geometry/point';
import { EXCHANGED } from '../tolerance';
import { D6673_LAYERS } from './d6673-layers';
import type { DxfEntity } from './read';

/** The layers of the points of a line. */
export const RULED: readonly string[] = [D6673_LAYERS.turnPoint, D6673_LAYERS.curvePoint];

/** Tells of entities whether they stand at a place. */
export function isAt(at: Point): (entity: DxfEntity) => boolean {
  return ({ points: [where] }) => where !== undefined && near(where, at);
}

/**
 * The number of the rule at a place. Where lines share a place the one that comes next after row
 * `row` counts, since the points of a line follow it.
 */
export function ruleAt(
  entities: readonly DxfEntity[],
  layers: readonly string[],
  at: Point | undefined,
  row: number,
): number | undefined {
  if (at === undefined) return undefined;
  const texts = entities.filter(
    (entity) =>
      entity.type === 'TEXT' &&
      layers.includes(entity.layer) &&
      /^#\s*\d+$/u.test(entity.words) &&
      isAt(at)(entity),
  );
  const text = texts.find((entity) => entity.row > row) ?? texts[0];
  return text === undefined ? undefined : Number(text.words.slice(1));
}

/** Whether a place is marked as a curve point, by the mark that comes next after row `row`. */
export function isSmooth(entities: readonly DxfEntity[], at: Point, row: number): boolean {
  const marks = entities.filter(
    (entity) => entity.type === 'POINT' && RULED.includes(entity.layer) && isAt(at)(entity),
  );
  const mark = marks.find((entity) => entity.row > row) ?? marks[0];
  return mark?.layer === D6673_LAYERS.curvePoint;
}

/** Whether two places are one, for all that rounding in a file may do. */
export function near(a: Point, b: Point): boolean {
  return distance(a, b) <= EXCHANGED / 2;
}

/** Whether a line ends where it begins. */
export function isLoop(points: readonly Point[]): boolean {
  const [first, last] = [points[0], points.at(-1)];
  return points.length > 3 && first !== undefined && last !== undefined && near(first, last);
}

/** Whether a place lies on a line from end to end. */
export function liesOn(at: Point, from: Point, to: Point): boolean {
  const [along, way] = [subtract(to, from), subtract(at, from)];
  const long = length(along);
  if (long === 0 || Math.abs(cross(along, way)) / long > EXCHANGED / 2) return false;
  const reach = dot(along, way) / long;
  return reach >= -EXCHANGED / 2 && reach <= long + EXCHANGED / 2;
}

/** The vertices from the first corner on, without a last one that repeats the first. */
export function outlineFrom(
  points: readonly Point[],
  isCorner: (at: Point) => boolean,
): readonly Point[] {
  const own = isLoop(points) ? points.slice(0, -1) : points;
  const start = Math.max(0, own.findIndex(isCorner));
  return [...own.slice(start), ...own.slice(0, start)];
}
