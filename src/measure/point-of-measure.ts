/** A point of measure on the pieces of a pattern, and taking it. */
import { crossingsAtLevel } from '../geometry/level';
import { distance, point } from '../geometry/point';
import { windingNumber } from '../geometry/winding';
import type { SeamSide } from '../given/pattern';
import type { Piece } from '../pattern/piece';
import { outlineSegments, pieceNamed, pointOf } from '../pattern/piece';
import { walkSide } from '../seams/seam-walk';
import { SAME_PLACE } from '../tolerance';
import type { MeasureGroup, Taken, Tolerance } from './spec';

/** A point by its name and that of its piece, as in `front.side_hip`. */
export interface PiecePoint {
  readonly piece: string;
  readonly point: string;
}

/** Along edges with darts closed, straight between two points, or across pieces at a level. */
export type Path =
  | { readonly kind: 'along'; readonly side: SeamSide }
  | { readonly kind: 'between'; readonly from: PiecePoint; readonly to: PiecePoint }
  | { readonly kind: 'across'; readonly levels: readonly PiecePoint[] };

/** Something to measure in every size, as a line of a spec has it. */
export interface PointOfMeasure {
  /** Its short name in the spec. */
  readonly code: string;
  readonly measure: string;
  /** How to measure, in words. */
  readonly how: string;
  readonly taken: Taken;
  readonly group: MeasureGroup;
  readonly path: Path;
  /** How often what is measured on the pieces goes into the garment: 2 for half a front and back. */
  readonly times: number;
  /** Undefined for the usual one. */
  readonly tolerance: Tolerance | undefined;
}

/** The value in mm in one size, as `taken` says: half of it where it is laid flat. */
export function takeMeasure(
  { path, times, taken }: Pick<PointOfMeasure, 'path' | 'times' | 'taken'>,
  pieces: readonly Piece[],
): number {
  return (times * lengthOf(path, pieces)) / (taken === 'flat' ? 2 : 1);
}

function lengthOf(path: Path, pieces: readonly Piece[]): number {
  switch (path.kind) {
    case 'along':
      return walkSide(pieces, path.side).length;
    case 'between': {
      const { from, to } = path;
      return distance(
        pointOf(pieceNamed(pieces, from.piece), from.point),
        pointOf(pieceNamed(pieces, to.piece), to.point),
      );
    }
    case 'across':
      return path.levels.reduce((sum, { piece, point: name }) => {
        const found = pieceNamed(pieces, piece);
        return sum + widthAt(found, pointOf(found, name).y);
      }, 0);
  }
}

/** mm of a piece that lie on a level, open darts left out. */
export function widthAt(piece: Piece, level: number): number {
  const loop = outlineSegments(piece);
  const crossed = [...crossingsAtLevel(loop, level)].sort((a, b) => a - b);
  return crossed.slice(1).reduce((sum, right, i) => {
    const left = crossed[i] ?? right;
    if (right - left <= SAME_PLACE) return sum;
    return isIn(loop, (left + right) / 2, level) ? sum + right - left : sum;
  }, 0);
}

/** Inside, or on an edge that runs along the level and has the piece on one of its sides. */
function isIn(loop: Parameters<typeof windingNumber>[0], x: number, level: number): boolean {
  const beside = 1e-4;
  return [-beside, beside].some((off) => windingNumber(loop, point(x, level + off)) !== 0);
}
