/** Which points the panels of a range have: decided once, so that all sizes have the same. */
import type { LengthLines } from '../length-lines';
import type { Vent } from './vent';

/** Half a front from the fold, or half a back from the center seam. */
export type Panel = 'front' | 'back';

/** What is decided once for a whole range. */
export interface PanelShape {
  readonly panel: Panel;
  /** None where the panel takes in nothing by darts in any size. */
  readonly darts: 0 | 1 | 2;
  /** False where the hem is as wide as the hip in every size. */
  readonly tapered: boolean;
  /** True where the side runs straight down for a while before the taper begins. */
  readonly taperedBelowHip: boolean;
  /** True where a curve leads from the hip into the taper; false leaves a corner there. */
  readonly blended: boolean;
  /** True where part of the dart nearest the side is closed into the hem. */
  readonly flared: boolean;
  /** The opening at center back; always `none` for a front. */
  readonly vent: Vent;
  /** True where the high hip is measured, which a line marks at the center. */
  readonly highHip: boolean;
  /** Where it is lengthened or shortened, the same on front and back. */
  readonly lines: LengthLines;
}

/** From the center: none, `dart` where there is one, else `inner_dart` and `outer_dart`. */
export function dartNames({ darts }: Pick<PanelShape, 'darts'>): readonly string[] {
  return { 0: [], 1: ['dart'], 2: ['inner_dart', 'outer_dart'] }[darts];
}

/** The dart nearest the side; a panel without darts has none to ask for. */
export function lastDart({ darts }: Pick<PanelShape, 'darts'>): string {
  return darts === 2 ? 'outer_dart' : 'dart';
}
