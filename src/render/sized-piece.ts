/** One piece in one size, as a sheet shows it. */
import type { CutPiece } from '../pattern/cut-piece';
import type { Piece } from '../pattern/piece';
import type { SizeStyle } from './size-style';

/** The piece of one size, and how that size is drawn. */
export interface SizedPiece {
  readonly label: string;
  readonly style: SizeStyle;
  readonly piece: Piece;
  /** Absent where there is only the net line to draw. */
  readonly cut: CutPiece | undefined;
}
