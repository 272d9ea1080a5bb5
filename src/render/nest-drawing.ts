/** What the drawings are made from. */
import type { Piece } from '../pattern/piece';
import type { LengthDisplay } from '../units';

/** A graded range ready to be drawn. */
export interface NestDrawing {
  readonly title: string;
  /** Label of the base size; it need not be among the sizes. */
  readonly baseSize: string;
  /** Name of the point on which the sizes are stacked. */
  readonly stackPoint: string;
  readonly display: LengthDisplay;
  /** Type size in mm of the labels at the lines of the sizes; that of a large sheet if absent. */
  readonly labelType?: number;
  /** Sentences at the foot of the sheet; those of a net pattern if absent. */
  readonly notes?: readonly string[];
  /** Smallest first; every size has the same pieces. */
  readonly sizes: readonly DrawnSize[];
}

export interface DrawnSize {
  readonly label: string;
  readonly pieces: readonly Piece[];
}
