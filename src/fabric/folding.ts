/**
 * How cloth is folded, and where on it pieces lie.
 *
 * x runs across the table from the left fold, or on open cloth from the left edge. Folded once, the
 * cloth lies from the fold to one selvage, and its upper layer ends at `flap`. Folded to the middle it
 * lies between two folds, and an upper layer ends at `flap` from each. What is cut once cannot be cut
 * from two layers: it is cut last from one layer of what is left, lies on the strip that the upper
 * layers leave free, or past everything else, where the cloth is opened out.
 */
import type { Cloth, Fold } from './cloth';

/** Flaps of two layers side by side, each with a fold along one edge. */
export const FLAPS: Readonly<Record<Fold, 0 | 1 | 2>> = { folded: 1, middle: 2, open: 0 };

/** What shapes are laid in: open cloth, or a flap or two of folded cloth, all as wide. */
export interface Lanes {
  /** mm across each that shapes may take. */
  readonly width: number;
  readonly count: number;
}

/** Cloth as it is folded, in mm. */
export interface Folding {
  /** From a fold to the selvage that lies upon the cloth; 0 on open cloth. */
  readonly flap: number;
  /** Across what no upper layer covers; all of open cloth. */
  readonly strip: number;
  /** From the left edge of the cloth on the table to its right one. */
  readonly across: number;
}

/** The cloth folded so that a strip `strip` mm wide stays in one layer. */
export function foldingOf({ width, fold }: Pick<Cloth, 'width' | 'fold'>, strip: number): Folding {
  const flaps = FLAPS[fold];
  if (flaps === 0) return { flap: 0, strip: width, across: width };
  const flap = (width - strip) / (2 * flaps);
  return { flap, strip, across: width - flaps * flap };
}

/** The strip, in mm, that has room for pieces `needed` mm wide: at a selvage or between the flaps. */
export function stripFor(
  { selvage, fold }: Pick<Cloth, 'selvage' | 'fold'>,
  needed: number,
): number {
  return fold === 'folded' ? needed + selvage : needed;
}

/** mm across that pieces may take of the strip where flaps leave no more than `flap` mm for their own. */
export function widestStrip({ width, selvage, fold }: Cloth, flap: number): number {
  const strip = width - 2 * FLAPS[fold] * (flap + selvage);
  return fold === 'folded' ? strip - selvage : strip;
}

/**
 * mm across that pieces may take: of one flap, from the fold to the selvage upon it, when a strip of
 * so many mm is left; of open cloth between its selvages.
 */
export function cuttableWidth(cloth: Cloth, strip = 0): number {
  const { width, selvage, fold } = cloth;
  return fold === 'open' ? width - 2 * selvage : foldingOf(cloth, strip).flap - selvage;
}

/**
 * Where a piece lies: on open cloth; on two layers from the first fold or from the second; in one
 * layer on the strip, or past the folded part where the cloth is opened out; or among the pieces on
 * two layers, to be cut last from one layer of what they leave.
 */
export type Zone = 'open' | 'fold' | 'second-fold' | 'strip' | 'opened-end' | 'rest';
