/** A piece ready to cut: its net outline with allowances, notches, drill holes and grain. */
import type { Point } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import type { Piece } from './piece';

/** A notch on the cut line, pointing into the piece. */
export interface Notch {
  /** What it marks and matches, such as `hip-line`, `dart`, `zip-end`, `center`. */
  readonly name: string;
  /** Where the mark meets the net line. */
  readonly net: Point;
  /** Where it begins on the cut line. */
  readonly cut: Point;
  /** Unit vector from the cut line into the piece. */
  readonly inward: Point;
  /** Single on the front, double on the back. */
  readonly marks: 1 | 2;
}

/** A piece of one size with all that is drawn on cloth; in mm, in the coordinates of the piece. */
export interface CutPiece {
  readonly piece: Piece;
  /** The piece's number in its pattern, from 1. */
  readonly number: number;
  /** The sewing line, closed, with its darts open. */
  readonly net: readonly Segment[];
  /** The cut line, closed; equal to the net line along a fold. */
  readonly cut: readonly Segment[];
  /** The point of the cut line that belongs to each named corner of the net line. */
  readonly corners: ReadonlyMap<string, Point>;
  readonly notches: readonly Notch[];
  readonly drillHoles: readonly Point[];
  /** Grainline from end to end. */
  readonly grain: { readonly from: Point; readonly to: Point };
  /** The fold edge from cut edge to cut edge, where the piece lies on folded cloth. */
  readonly fold: { readonly from: Point; readonly to: Point } | undefined;
  /** Allowance in mm by seam name, in the order of the outline, for the label. */
  readonly allowances: ReadonlyMap<string, number>;
}
