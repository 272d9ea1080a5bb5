/** The marks of a cut piece that belong to one size: notches and drill holes. */
import { add, quarterTurn, scale } from '../geometry/point';
import type { CutPiece, Notch } from '../pattern/cut-piece';
import type { PathShape, Stroke } from './scene';
import { circle, polyline } from './scene';

/** mm that a notch reaches into the piece: less than any allowance that wants one. */
const DEPTH = 6;
/** mm between the two strokes of a double notch. */
const DOUBLE = 4;
/** mm. */
const HOLE = 2;

/** `color` is that of the size. */
export function cutMarks({ notches, drillHoles }: CutPiece, color: string): readonly PathShape[] {
  return [
    ...notches.flatMap((notch) => notchStrokes(notch, { color, width: 0.6 })),
    ...drillHoles.map((at) => circle('drill-hole', at, HOLE, { color, width: 0.4 })),
  ];
}

/** One stroke across the cut edge toward the seam, or two side by side. */
function notchStrokes({ cut, inward, marks }: Notch, stroke: Stroke): readonly PathShape[] {
  const aside = scale(quarterTurn(inward), DOUBLE / 2);
  const starts = marks === 1 ? [cut] : [add(cut, aside), add(cut, scale(aside, -1))];
  return starts.map((from) => polyline('notch', [from, add(from, scale(inward, DEPTH))], stroke));
}
