/** Where the notches and drill holes of a piece stand in one size. */
import { nearestOn } from '../geometry/nearest';
import type { Point } from '../geometry/point';
import { distance, point, scale, subtract, unit } from '../geometry/point';
import { segmentAt } from '../geometry/segment';
import type { SeamPlace } from './along-seam';
import { lengthToEnd, outwardAt, placeBeforeEnd } from './along-seam';
import type { DrillRule, NotchPlace, NotchRule, Piece } from './piece';
import { edgeSegments, outlineSegments, pieceNamed, pointOf } from './piece';
import { zipEnd, zipOf } from './zip';

/** A notch before the cut line is known. */
export interface PlacedNotch extends SeamPlace {
  readonly name: string;
  readonly marks: 1 | 2;
  /** Where it meets the sewing line, if `at` is given on the cut line already. */
  readonly net: Point | undefined;
}

/**
 * The notches of a piece among the pieces of its size; one whose place the size does not have, such
 * as the end of a zip on a shorter seam, is left out. Throws a RangeError for a notch at a point or
 * piece that is not there.
 */
export function notchPlaces(
  piece: Piece,
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): readonly PlacedNotch[] {
  return piece.plan.notches.flatMap(({ name, marks, place }: NotchRule): readonly PlacedNotch[] => {
    const found = placeOf(place, piece, pieces, parameters);
    return found === undefined ? [] : [{ net: undefined, ...found, name, marks }];
  });
}

function placeOf(
  place: NotchPlace,
  piece: Piece,
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): (SeamPlace & { readonly net?: Point }) | undefined {
  switch (place.by) {
    case 'joint':
      return jointOf(piece, place.point, place.beside);
    case 'along': {
      const at = pointOf(piece, place.point);
      return { at, outward: unit(subtract(at, pointOf(piece, place.from))) };
    }
    case 'level': {
      const length = lengthToEnd(pieceNamed(pieces, place.like), place.edge, place.joint);
      return length === undefined ? undefined : placeBeforeEnd(piece, place.edge, length);
    }
    case 'zip': {
      const zip = zipOf(pieces, parameters);
      return zip && placeBeforeEnd(piece, place.edge, zipEnd(zip));
    }
    case 'cut': {
      const at = pointOf(piece, place.point);
      const net =
        place.sewn === undefined ? nearestOnOutline(piece, at) : pointOf(piece, place.sewn);
      return { at, net, outward: unit(subtract(at, net)) };
    }
  }
}

/** Square to the edge that arrives at a point of the outline, or to the one that leaves it. */
function jointOf(piece: Piece, name: string, beside: 'before' | 'after'): SeamPlace | undefined {
  const edge = piece.plan.outline.find(
    ({ from, to }) => (beside === 'before' ? to : from) === name,
  );
  const segments = edge === undefined ? [] : edgeSegments(piece, edge);
  const segment = beside === 'before' ? segments.at(-1) : segments[0];
  return (
    segment && {
      at: pointOf(piece, name),
      outward: outwardAt(piece, segment, beside === 'before' ? 1 : 0),
    }
  );
}

/** The place of the sewing line that is nearest to a point. */
function nearestOnOutline(piece: Piece, at: Point): Point {
  return outlineSegments(piece)
    .map((part) => segmentAt(part, nearestOn(part, at)))
    .reduce((a, b) => (distance(b, at) < distance(a, at) ? b : a));
}

/** mm, 9/16 in: the hole must not show beyond the stitching (common practice, no source). */
const DRILL_SHORT = 15;

/** A drill hole's place: its point, or short of the tip of its dart, on the axis. */
export function drillHole(piece: Piece, rule: DrillRule): Point {
  if ('point' in rule) return pointOf(piece, rule.point);
  const dart = piece.plan.darts.find(({ name }) => name === rule.dart);
  if (dart === undefined) throw new RangeError(`${piece.plan.name} has no dart ${rule.dart}`);
  const [a, b, end] = [dart.from, dart.to, dart.tip].map((name) => pointOf(piece, name)) as [
    Point,
    Point,
    Point,
  ];
  const up = subtract(scale(point(a.x + b.x, a.y + b.y), 0.5), end);
  const long = Math.hypot(up.x, up.y);
  const share = long === 0 ? 0 : Math.min(DRILL_SHORT / long, 0.5);
  return point(end.x + share * up.x, end.y + share * up.y);
}
