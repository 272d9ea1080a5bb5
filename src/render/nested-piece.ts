/** One piece in all the sizes that a sheet shows. */
import type { Box } from '../geometry/bounds';
import { joinBoxes, pointBounds } from '../geometry/bounds';
import type { Piece } from '../pattern/piece';
import { outlineSegments } from '../pattern/piece';
import type { Chain, Chord } from './chords';
import { chordsOf, flattened } from './chords';
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
  /** The outlines of all sizes, curves as chords. */
  readonly outlines: readonly Chain[];
  /** All lines of all sizes, the marked ones too. */
  readonly chords: readonly Chord[];
  /** The box around all lines of all sizes. */
  readonly box: Box;
}

/** Nests the sizes of a piece. The words go by the base, or without one by the middle size. */
export function nestedPiece(sizes: readonly SizedPiece[]): NestedPiece {
  const words = sizes.find(({ style }) => style.base) ?? sizes[Math.floor(sizes.length / 2)];
  if (words === undefined) throw new RangeError('a piece is drawn in one size at least');
  const outlines = sizes.map(({ piece }) => flattened(outlineSegments(piece)));
  const marks = sizes.flatMap(({ piece }) =>
    piece.plan.marks.map((mark) => markPoints(piece, mark)),
  );
  const lines = [...outlines, ...marks];
  return {
    sizes,
    reference: words.piece,
    outlines,
    chords: chordsOf(lines),
    box: joinBoxes(lines.map(pointBounds)),
  };
}
