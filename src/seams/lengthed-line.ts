/** A line of a piece by the places of its points, its length, and how that follows its ends. */
import type { Point } from '../geometry/point';
import { scale, subtract, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentLength, segmentTangent } from '../geometry/segment';
import type { Piece } from '../pattern/piece';

/** A straight line, or a curve whose handles go with its ends; points are places in the plan. */
export interface LengthedLine {
  readonly piece: number;
  readonly from: number;
  readonly to: number;
  readonly handles: { readonly leave: number; readonly arrive: number } | undefined;
}

function segmentOf(pieces: readonly Piece[], line: LengthedLine): Segment {
  const points = pieces[line.piece]?.points ?? [];
  const at = (place: number): Point => points[place] as Point;
  const [from, to] = [at(line.from), at(line.to)];
  if (line.handles === undefined) return { kind: 'line', from, to };
  const [leave, arrive] = [at(line.handles.leave), at(line.handles.arrive)];
  return { kind: 'cubic', from, leave, arrive, to };
}

/** Length in mm; NaN for a line that is not there. */
export function lineLength(pieces: readonly Piece[], line: LengthedLine | undefined): number {
  return line === undefined ? NaN : segmentLength(segmentOf(pieces, line));
}

/** Simpson's rule over eight parts: weights in twenty-fourths. */
const SIMPSON = [1, 4, 2, 4, 2, 4, 2, 4, 1] as const;

/**
 * mm that the line grows for each mm by which its end moves away from its start. Ends of a curve carry
 * their handles, so that a place at share t of the curve follows its end by 3t^2 - 2t^3.
 */
export function lineSlope(pieces: readonly Piece[], line: LengthedLine): Point {
  const segment = segmentOf(pieces, line);
  if (segment.kind === 'line') return unit(subtract(segment.to, segment.from));
  let [x, y] = [0, 0];
  SIMPSON.forEach((weight, i) => {
    const t = i / (SIMPSON.length - 1);
    const follows = (weight / 24) * 6 * t * (1 - t);
    const along = scale(unit(segmentTangent(segment, t)), follows);
    x += along.x;
    y += along.y;
  });
  return { x, y };
}
