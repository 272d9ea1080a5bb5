/** Notches and drill holes where a pattern gives them as points. */
import { distanceToSegment, nearestOn } from '../geometry/nearest';
import { add, cross, quarterTurn, scale, unit } from '../geometry/point';
import { segmentTangent } from '../geometry/segment';
import { drillHole } from '../pattern/notch-places';
import type { Piece } from '../pattern/piece';
import { outlineSegments, pointOf } from '../pattern/piece';
import { EXCHANGED } from '../tolerance';
import type { PathShape, Stroke } from './scene';
import { circle, polyline } from './scene';

/** mm that a notch reaches into the piece, and the radius of a drill hole. */
const NOTCH = 6;
const HOLE = 2;

/** Short strokes into the piece at the notches of its outline, and rings at its drill holes. */
export function givenMarks(piece: Piece, stroke: Stroke): readonly PathShape[] {
  const { notches, drillHoles } = piece.plan;
  if (notches.length === 0 && drillHoles.length === 0) return [];
  const net = outlineSegments(piece);
  const area = net.reduce((sum, { from, to }) => sum + cross(from, to), 0);
  const inward = area > 0 ? NOTCH : -NOTCH;
  return [
    ...notches.flatMap(({ place }) => {
      if (place.by !== 'joint') return [];
      const at = pointOf(piece, place.point);
      const segment = net.find((part) => distanceToSegment(part, at) <= EXCHANGED);
      // A notch of the cut line belongs to that line.
      if (segment === undefined) return [];
      const along = unit(segmentTangent(segment, nearestOn(segment, at)));
      const into = scale(quarterTurn(along), inward);
      return [polyline('notch', [at, add(at, into)], stroke)];
    }),
    ...drillHoles.map((rule) => circle('drill-hole', drillHole(piece, rule), HOLE, stroke)),
  ];
}
