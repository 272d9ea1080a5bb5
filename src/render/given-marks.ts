/** Notches and drill holes where a pattern gives them as points. */
import { add, cross, quarterTurn, scale, unit } from '../geometry/point';
import { segmentTangent } from '../geometry/segment';
import type { Piece } from '../pattern/piece';
import { edgeSegments, outlineSegments, pointOf } from '../pattern/piece';
import type { PathShape, Stroke } from './scene';
import { circle, polyline } from './scene';

/** mm that a notch reaches into the piece, and the radius of a drill hole. */
const NOTCH = 6;
const HOLE = 2;

/** Short strokes into the piece at its notches, and rings at its drill holes. */
export function givenMarks(piece: Piece, stroke: Stroke): readonly PathShape[] {
  const { notches = [], drillHoles = [], outline } = piece.plan;
  if (notches.length === 0 && drillHoles.length === 0) return [];
  const area = outlineSegments(piece).reduce((sum, { from, to }) => sum + cross(from, to), 0);
  const inward = area > 0 ? NOTCH : -NOTCH;
  return [
    ...notches.flatMap((name) => {
      const leaving = outline.find((edge) => edge.from === name);
      const segment = leaving && edgeSegments(piece, leaving)[0];
      if (segment === undefined) return [];
      const into = scale(quarterTurn(unit(segmentTangent(segment, 0))), inward);
      return [polyline('notch', [segment.from, add(segment.from, into)], stroke)];
    }),
    ...drillHoles.map((name) => circle('drill-hole', pointOf(piece, name), HOLE, stroke)),
  ];
}
