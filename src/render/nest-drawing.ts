/** What the drawings are made from. */
import type { CutPiece } from '../pattern/cut-piece';
import type { Piece } from '../pattern/piece';
import type { Imprint } from '../table/imprint';
import type { LengthDisplay } from '../units';
import type { LinesShown } from './lines-shown';

/** A graded range ready to be drawn. */
export interface NestDrawing {
  readonly title: string;
  /** What a cover tells of the design besides; nothing if absent. */
  readonly imprint?: Imprint;
  /** Label of the base size; it need not be among the sizes. */
  readonly baseSize: string;
  /** Name of the point on which the sizes are stacked. */
  readonly stackPoint: string;
  readonly display: LengthDisplay;
  /** Type size in mm of the labels at the lines of the sizes; that of a large sheet if absent. */
  readonly labelType?: number;
  /** The file that gave the lines, where they are neither drafted nor widened by allowances. */
  readonly given?: string;
  /** Net lines, cut lines or both; both if absent. Sizes without cut pieces show net lines. */
  readonly lines?: LinesShown;
  /** Whether sizes of the range between those drawn are left out; false if absent. */
  readonly gapped?: boolean;
  /** Smallest first; every size has the same pieces. */
  readonly sizes: readonly DrawnSize[];
}

/** A size, and what it is called in words if not `Size` and its label. */
export interface CalledSize {
  readonly label: string;
  readonly called?: string;
}

/** One size to be drawn, its pieces in the order that all sizes have. */
export interface DrawnSize extends CalledSize {
  readonly pieces: readonly Piece[];
  /** The same pieces with their allowances, if they have any. */
  readonly cutPieces?: readonly CutPiece[] | undefined;
}

/** The lines that a drawing shows. */
export function linesShown({ lines = 'both', sizes }: NestDrawing): LinesShown {
  return sizes.every(({ cutPieces }) => cutPieces !== undefined) ? lines : 'net';
}
