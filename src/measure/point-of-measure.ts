/** A point of measure on the pieces of a pattern, and taking it. */
import { distance } from '../geometry/point';
import type { SeamSide } from '../pattern/seam-pair';
import type { Piece } from '../pattern/piece';
import { pieceNamed, pointOf, seamLength } from '../pattern/piece';
import { widthAt } from '../pattern/width';
import type { MeasureGroup, Taken, Tolerance } from './spec';

/** A point by its name and that of its piece, as in `front.side_hip`. */
export interface PiecePoint {
  readonly piece: string;
  readonly point: string;
}

/**
 * Along edges with darts closed, straight between two points, across pieces at a level, or a length
 * that a size states by name because no piece shows it, such as the zip that is bought.
 */
export type MeasurePath =
  | { readonly kind: 'along'; readonly side: SeamSide }
  | { readonly kind: 'between'; readonly from: PiecePoint; readonly to: PiecePoint }
  | { readonly kind: 'across'; readonly levels: readonly PiecePoint[] }
  | { readonly kind: 'stated'; readonly length: string };

/** What is measured on a garment, as data. */
export interface PointOfMeasure {
  /** Its code in a spec; empty for one that is taken but left out of the spec. */
  readonly code: string;
  readonly measure: string;
  /** How to measure, in words. */
  readonly how: string;
  readonly taken: Taken;
  readonly group: MeasureGroup;
  readonly path: MeasurePath;
  /** How often what is measured on the pieces goes into the garment: 2 for half a front and back. */
  readonly times: number;
  /** Undefined for the usual one. */
  readonly tolerance: Tolerance | undefined;
}

/** Lengths in mm that a size states by name. */
export type StatedLengths = ReadonlyMap<string, number>;

/** Of a size that states none. */
export const NO_LENGTHS: StatedLengths = new Map();

/**
 * The value in mm in one size, as `taken` says: half of it where it is laid flat. Undefined for a
 * stated length that the size does not state. Throws a RangeError for a piece or point that is not
 * there.
 */
export function takeMeasure(
  { path, times, taken }: Pick<PointOfMeasure, 'path' | 'times' | 'taken'>,
  pieces: readonly Piece[],
  lengths: StatedLengths = NO_LENGTHS,
): number | undefined {
  const once = lengthOf(path, pieces, lengths);
  return once === undefined ? undefined : (times * once) / (taken === 'flat' ? 2 : 1);
}

function lengthOf(
  path: MeasurePath,
  pieces: readonly Piece[],
  lengths: StatedLengths,
): number | undefined {
  switch (path.kind) {
    case 'along':
      return path.side.edges.reduce(
        (sum, { piece, edge }) => sum + seamLength(pieceNamed(pieces, piece), edge),
        0,
      );
    case 'between': {
      const { from, to } = path;
      return distance(
        pointOf(pieceNamed(pieces, from.piece), from.point),
        pointOf(pieceNamed(pieces, to.piece), to.point),
      );
    }
    case 'across':
      return path.levels.reduce((sum, { piece, point }) => {
        const found = pieceNamed(pieces, piece);
        return sum + widthAt(found, pointOf(found, point).y);
      }, 0);
    case 'stated':
      return lengths.get(path.length);
  }
}
