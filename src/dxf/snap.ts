/** Marks and words put onto the points that they stand beside, as rounding in a drawing leaves them. */
import type { Point } from '../geometry/point';
import { distance } from '../geometry/point';
import type { ReadingNote } from '../pattern/pattern';
import { RULE_AT, RULE_BESIDE } from '../tolerance';
import { RULED, near } from './block-places';
import { D6673_LAYERS } from './d6673-layers';
import type { PlaceIndex } from './place-index';
import { placeIndex } from './place-index';
import type { DxfEntity } from './entity';

/**
 * The entities of a block in mm, `corners` being the points of its closed lines. What stands within
 * RULE_AT of a point is on it; a rule or a mark of an outline up to RULE_BESIDE is too, if no other
 * point is less than twice as far away, and that is said.
 */
export function snapped(
  entities: readonly DxfEntity[],
  corners: readonly Point[],
  piece: string,
): { readonly entities: readonly DxfEntity[]; readonly notes: readonly ReadingNote[] } {
  const beside: { readonly row: number; readonly away: number }[] = [];
  const onto = (entity: DxfEntity, anchors: PlaceIndex<Point>, reach: number): DxfEntity => {
    const [at] = entity.points;
    const found = at && nearestTwo(at, anchors);
    if (at === undefined || found === undefined || found.away > reach) return entity;
    if (found.away > RULE_AT) {
      if (found.other <= 2 * found.away) return entity;
      beside.push({ row: entity.row, away: found.away });
    }
    const { x, y } = found.nearest;
    return { ...entity, points: [{ x, y }] };
  };
  const atCorners = anchorsAt(corners);
  const marks = entities.map((entity) => {
    const isMark = entity.type === 'POINT' && RULED.includes(entity.layer);
    return isMark ? onto(entity, atCorners, RULE_BESIDE) : entity;
  });
  const ownPoints = new Map<string, Point[]>();
  for (const { type, layer, points } of marks) {
    if (type === 'TEXT') continue;
    const own = ownPoints.get(layer) ?? [];
    for (const at of points) own.push(at);
    ownPoints.set(layer, own);
  }
  const atNamed = anchorsAt([...corners, ...(ownPoints.get(D6673_LAYERS.notch) ?? [])]);
  const atOwn = new Map([...ownPoints].map(([layer, own]) => [layer, anchorsAt(own)]));
  const all = marks.map((entity) => {
    if (entity.type !== 'TEXT') return entity;
    if (entity.layer === D6673_LAYERS.annotation) {
      // What our own words say of a notch on the seam line is there between its points.
      return NAMING.test(entity.words) ? onto(entity, atNamed, RULE_AT) : entity;
    }
    const anchors = RULED.includes(entity.layer) ? atCorners : atOwn.get(entity.layer);
    return anchors === undefined ? entity : onto(entity, anchors, RULE_BESIDE);
  });
  return { entities: all, notes: besideNote(beside, piece) };
}

const NAMING = /^(EDGE: |DART: |DOUBLE NOTCH$)/u;

/** Notches within RULE_AT of one of `smooth`, the points in the curves of an outline, put onto it. */
export function notchesOnto(
  entities: readonly DxfEntity[],
  smooth: readonly Point[],
): readonly DxfEntity[] {
  const atSmooth = anchorsAt(smooth);
  return entities.map((entity) => {
    const { layer, words, type } = entity;
    const isNotch = layer === D6673_LAYERS.notch && (type === 'POINT' || type === 'TEXT');
    const [at] = entity.points;
    if (at === undefined || !(isNotch || words === 'DOUBLE NOTCH')) return entity;
    const found = nearestTwo(at, atSmooth);
    if (found === undefined || found.away > RULE_AT) return entity;
    return { ...entity, points: [{ x: found.nearest.x, y: found.nearest.y }] };
  });
}

/** Two of which one is less than twice as far away as the other lie within twice the reach. */
function anchorsAt(points: readonly Point[]): PlaceIndex<Point> {
  return placeIndex(points, (at) => at, 2 * RULE_BESIDE);
}

/** The nearest place, mm to it, and mm to the nearest other place. */
function nearestTwo(at: Point, anchors: PlaceIndex<Point>) {
  let nearest: Point | undefined;
  let [away, other] = [Infinity, Infinity];
  for (const anchor of anchors(at)) {
    const own = distance(at, anchor);
    if (own >= other || (nearest !== undefined && near(anchor, nearest))) continue;
    if (own < away) [nearest, away, other] = [anchor, own, away];
    else other = own;
  }
  return nearest && { nearest, away, other };
}

function besideNote(
  beside: readonly { readonly row: number; readonly away: number }[],
  piece: string,
): readonly ReadingNote[] {
  const [first] = beside;
  if (first === undefined) return [];
  const most = beside.reduce((worst, { away }) => Math.max(worst, away), 0);
  const many =
    beside.length === 1 ? 'a rule or mark stands' : `${beside.length} rules or marks stand`;
  return [
    {
      severity: 'warning',
      check: 'rule-beside',
      piece,
      what:
        `${many} beside the points of the outline, by up to ${Math.round(most * 100) / 100} mm, the ` +
        `first in row ${first.row}; each counts for the point that is nearest`,
    },
  ];
}
