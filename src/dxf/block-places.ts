/** What stands at a place of a block: marks, rule numbers, lines that pass it. */
import type { Point } from '../geometry/point';
import { cross, distance, dot, length, subtract } from '../geometry/point';
import { EXCHANGED, RULE_AT } from '../tolerance';
import { D6673_LAYERS } from './d6673-layers';
import type { LinePoint } from './line-point';
import type { PlaceIndex } from './place-index';
import { placeIndex } from './place-index';
import type { DxfEntity } from './entity';

/** The layers of the points of a line. */
export const RULED: readonly string[] = [D6673_LAYERS.turnPoint, D6673_LAYERS.curvePoint];

/** Tells of entities whether they stand at a place. */
export function isAt(at: Point): (entity: DxfEntity) => boolean {
  return ({ points: [where] }) => where !== undefined && near(where, at);
}

/** The marks of turn and curve points among the entities of a block. */
export function marksOf(entities: readonly DxfEntity[]): PlaceIndex<DxfEntity> {
  const marks = entities.filter(({ type, layer }) => type === 'POINT' && RULED.includes(layer));
  return placeIndex(marks, ({ points: [at] }) => at, SAME);
}

/**
 * Whether a line runs on at a point without a corner: as the mark says that comes next after row
 * `row`; without a mark only in the middle of a curve.
 */
export function isSmooth(marks: PlaceIndex<DxfEntity>, at: LinePoint, row: number): boolean {
  const here = marks(at);
  const mark = here.find((entity) => entity.row > row) ?? here[0];
  return mark === undefined ? at.inner === true : mark.layer === D6673_LAYERS.curvePoint;
}

/** mm. Places nearer than this are one, for all that rounding in a file may do. */
export const SAME = EXCHANGED / 2;

/** Whether two places are one. */
export function near(a: Point, b: Point): boolean {
  return distance(a, b) <= SAME;
}

/** Whether a place lies on a line from end to end, for all that rounding may do. */
export function liesOn(at: Point, from: Point, to: Point): boolean {
  const [along, way] = [subtract(to, from), subtract(at, from)];
  const long = length(along);
  if (long === 0 || Math.abs(cross(along, way)) / long > RULE_AT) return false;
  const reach = dot(along, way) / long;
  return reach >= -RULE_AT && reach <= long + RULE_AT;
}

/** The points of a closed line from the first corner on. */
export function outlineFrom(
  points: readonly LinePoint[],
  isCorner: (at: LinePoint) => boolean,
): readonly LinePoint[] {
  const start = Math.max(0, points.findIndex(isCorner));
  return [...points.slice(start), ...points.slice(0, start)];
}

/** Tells whether a place is one of some points. */
export function placeSet(points: readonly Point[]): (at: Point) => boolean {
  const index = placeIndex(points, (own) => own, SAME);
  return (at) => index(at).length > 0;
}
