/** One piece in all the sizes that a sheet shows. */
import type { Box } from '../geometry/bounds';
import { joinBoxes, pointBounds } from '../geometry/bounds';
import type { Piece } from '../pattern/piece';
import { outlineSegments } from '../pattern/piece';
import type { Surroundings } from './free-space';
import { flattened } from './free-space';
import { markPoints } from './piece-lines';
import type { SizeStyle } from './size-style';

/** The piece of one size, and how that size is drawn. */
export interface SizedPiece {
  readonly label: string;
  readonly style: SizeStyle;
  readonly piece: Piece;
}

export interface NestedPiece {
  /** Smallest size first. */
  readonly sizes: readonly SizedPiece[];
  /** The piece of the size on which the words are placed. */
  readonly reference: Piece;
  /** The lines of all sizes, for finding room between them. */
  readonly around: Surroundings;
  /** The box around all lines of all sizes. */
  readonly box: Box;
}

/** Nests the sizes of a piece. The words go by the base, or without one by the middle size. */
export function nestedPiece(sizes: readonly SizedPiece[]): NestedPiece {
  const words = sizes.find(({ style }) => style.base) ?? sizes[Math.floor(sizes.length / 2)];
  if (words === undefined) throw new RangeError('a piece is drawn in one size at least');
  const outlines = sizes.map(({ piece }) => flattened(outlineSegments(piece)));
  const lines = sizes.flatMap(({ piece }) =>
    piece.plan.marks.map((mark) => markPoints(piece, mark)),
  );
  const box = joinBoxes([...outlines, ...lines].map(pointBounds));
  return { sizes, reference: words.piece, around: { outlines, lines }, box };
}
