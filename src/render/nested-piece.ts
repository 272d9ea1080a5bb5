/** One piece in all the sizes that a sheet shows. */
import type { Box } from '../geometry/bounds';
import { joinBoxes, segmentsBounds } from '../geometry/bounds';
import type { Piece } from '../pattern/piece';
import { outlineSegments } from '../pattern/piece';
import type { Chain, Chord } from './chords';
import { chordsOf, flattened } from './chords';
import type { GivenGrain } from './given-grain';
import { givenGrain } from './given-grain';
import type { LinesShown } from './lines-shown';
import { pieceLines, pieceMarks } from './piece-lines';
import type { SizedPiece } from './sized-piece';

/** A piece in all sizes with what is needed to find room for words in it, in mm. */
export interface NestedPiece {
  /** Smallest size first. */
  readonly sizes: readonly SizedPiece[];
  /** The piece of the size on which the words are placed. */
  readonly reference: Piece;
  readonly lines: LinesShown;
  /** The grainlines that the pattern gives. */
  readonly grain: GivenGrain;
  /** The net outlines of all sizes, curves as chords. */
  readonly outlines: readonly Chain[];
  /** All lines of all sizes, the marked ones too. */
  readonly chords: readonly Chord[];
  /** The box around all lines of all sizes. */
  readonly box: Box;
}

/**
 * Nests the sizes of a piece. The words go by the base, or without one by the middle size; they
 * belong within the net lines, even where these are not shown.
 */
export function nestedPiece(sizes: readonly SizedPiece[], lines: LinesShown): NestedPiece {
  const words = sizes.find(({ style }) => style.base) ?? sizes[Math.floor(sizes.length / 2)];
  if (words === undefined) throw new RangeError('a piece is drawn in one size at least');
  const outlines = sizes.map(({ piece }) => flattened(outlineSegments(piece)));
  const drawn = sizes.flatMap((size) => [...pieceLines(size, lines), ...pieceMarks(size, lines)]);
  const chains = drawn.flatMap(({ segments }) => segments.map((segment) => flattened([segment])));
  const grain = givenGrain(
    sizes.map(({ piece }) => piece),
    words.piece,
  );
  const grains = [grain.shared, ...grain.own].filter((line) => line !== undefined);
  return {
    sizes,
    reference: words.piece,
    lines,
    grain,
    outlines,
    chords: [...chordsOf(chains), ...grains],
    box: joinBoxes([
      ...drawn.map(({ segments }) => segmentsBounds(segments)),
      segmentsBounds(grains),
    ]),
  };
}
