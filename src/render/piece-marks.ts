/** The marks of a piece in one size: notches and drill holes, wherever the drawing shows them. */
import { distanceToSegment, nearestOn } from '../geometry/nearest';
import type { Point } from '../geometry/point';
import { add, cross, point, quarterTurn, scale, unit } from '../geometry/point';
import { segmentTangent } from '../geometry/segment';
import { drillHole } from '../pattern/notch-places';
import type { Piece } from '../pattern/piece';
import { outlineSegments, pointOf } from '../pattern/piece';
import { EXCHANGED } from '../tolerance';
import type { LinesShown } from './lines-shown';
import type { PathShape, Stroke } from './scene';
import { circle, polyline } from './scene';
import type { SizedPiece } from './sized-piece';

/** A notch or a drill hole as it is drawn, in the coordinates of the piece. */
export interface PieceMark {
  readonly part: 'notch' | 'drill-hole';
  readonly name: string;
  /** Where a notch begins, or the middle of a hole. */
  readonly at: Point;
  /** Unit vector along which a notch reaches into the piece; upward for a hole. */
  readonly inward: Point;
  /** Strokes of a notch. */
  readonly marks: 1 | 2;
  /** mm. Widths of the lines that draw it. */
  readonly width: number;
}

/** mm that a notch reaches into the piece: less than any allowance that wants one. */
export const NOTCH_DEPTH = 6;
/** mm between the two strokes of a double notch. */
export const DOUBLE = 4;
/** mm. Radius of a drill hole. */
const HOLE = 2;
const UP = point(0, -1);

/** The marks of one size, on the cut line where that is shown, else on the net line. */
export function marksOf(
  { piece, cut, style }: SizedPiece,
  lines: LinesShown,
): readonly PieceMark[] {
  if (cut === undefined) return givenMarks(piece, style.outline.width);
  return [
    ...cut.notches.map((own): PieceMark => ({
      part: 'notch',
      name: own.name,
      at: lines === 'net' ? own.net : own.cut,
      inward: own.inward,
      marks: own.marks,
      width: 0.6,
    })),
    ...cut.drillHoles.map((at): PieceMark => hole(at, 0.4)),
  ];
}

/** Notches and drill holes where a pattern gives them as points. */
function givenMarks(piece: Piece, width: number): readonly PieceMark[] {
  const { notches, drillHoles } = piece.plan;
  if (notches.length === 0 && drillHoles.length === 0) return [];
  const net = outlineSegments(piece);
  const area = net.reduce((sum, { from, to }) => sum + cross(from, to), 0);
  return [
    ...notches.flatMap(({ name, place }): readonly PieceMark[] => {
      if (place.by !== 'joint') return [];
      const at = pointOf(piece, place.point);
      const segment = net.find((part) => distanceToSegment(part, at) <= EXCHANGED);
      // A notch of the cut line belongs to that line.
      if (segment === undefined) return [];
      const along = unit(segmentTangent(segment, nearestOn(segment, at)));
      const inward = scale(quarterTurn(along), area > 0 ? 1 : -1);
      return [{ part: 'notch', name, at, inward, marks: 1, width }];
    }),
    ...drillHoles.map((rule) => hole(drillHole(piece, rule), width)),
  ];
}

function hole(at: Point, width: number): PieceMark {
  return { part: 'drill-hole', name: 'drill hole', at, inward: UP, marks: 1, width };
}

/** One stroke from the edge toward the seam, or two side by side; a ring for a drill hole. */
export function markShapes(
  { part, at, inward, marks }: PieceMark,
  stroke: Stroke,
  depth = NOTCH_DEPTH,
): readonly PathShape[] {
  if (part === 'drill-hole') return [circle(part, at, Math.min(HOLE, depth), stroke)];
  const aside = scale(quarterTurn(inward), DOUBLE / 2);
  const starts = marks === 1 ? [at] : [add(at, aside), add(at, scale(aside, -1))];
  return starts.map((from) => polyline(part, [from, add(from, scale(inward, depth))], stroke));
}
