/** No outline may cross itself, in any size. */
import type { Point } from '../geometry/point';
import { firstCrossing } from '../geometry/simple-polygon';
import { segmentAt } from '../geometry/segment';
import type { GradedPattern } from '../grade/graded-pattern';
import type { Piece } from '../pattern/piece';
import { edgeSegments } from '../pattern/piece';
import type { Finding } from './finding';
import { found } from './finding';

/** Chords that stand for a curve here; skirt curves are flat enough for this. */
const CHORDS = 12;

/** A finding for each piece of each size; a crossing fails and is named by the edges that meet. */
export function checkOutlineSimple(range: Pick<GradedPattern, 'sizes'>): Finding[] {
  return range.sizes.flatMap((size) =>
    size.pieces.map((piece): Finding => {
      const { corners, seams } = flattened(piece);
      const crossing = firstCrossing(corners);
      const [a, b] = crossing?.map((side) => seams[side] ?? '') ?? [];
      return found({
        severity: crossing === undefined ? 'ok' : 'fail',
        check: 'outline-simple',
        size: size.label,
        piece: piece.plan.name,
        subject: crossing === undefined ? 'outline' : `${a} and ${b}`,
        message:
          crossing === undefined
            ? 'the outline does not cross itself'
            : `the outline crosses itself: ${a} meets ${b}`,
      });
    }),
  );
}

function flattened(piece: Piece): { corners: Point[]; seams: string[] } {
  const corners: Point[] = [];
  const seams: string[] = [];
  for (const edge of piece.plan.outline) {
    for (const segment of edgeSegments(piece, edge)) {
      const parts = segment.kind === 'line' ? 1 : CHORDS;
      for (let i = 0; i < parts; i++) {
        corners.push(segmentAt(segment, i / parts));
        seams.push(edge.seam);
      }
    }
  }
  return { corners, seams };
}
