/** Cloth as it lies on the table: its width, how it is folded, whether it has a nap. */
import type { Cutting } from '../pattern/piece';
import type { LengthUnit } from '../units';
import { toMillimeters } from '../units';

/** What a piece is cut from. */
export type ClothName = Cutting['cloth'];

/** Every cloth, in the order of the tables. */
export const CLOTH_NAMES: readonly ClothName[] = ['shell', 'lining', 'interfacing'];

/**
 * `folded` lengthwise once, and `middle`, both selvages folded in toward the middle: what is cut
 * twice, or on the fold, is cut from two layers at once. `open` in one layer: pieces that go on the
 * fold are laid whole, and pairs as a piece and its mirror image.
 */
export type Fold = 'folded' | 'middle' | 'open';

/** With a nap (pile, one-way print) all pieces lie the same way up; without, half a turn is free. */
export type Nap = 'with' | 'without';

/** Every way to lay cloth, in the order of the tables. */
export const FOLDS: readonly Fold[] = ['folded', 'middle', 'open'];

/** Both, in the order of the tables. */
export const NAPS: readonly Nap[] = ['with', 'without'];

/** Common practice, no source: linings and interfacings are plain; of a shell, better be sure. */
export const USUAL_NAP: Readonly<Record<ClothName, Nap>> = {
  shell: 'with',
  lining: 'without',
  interfacing: 'without',
};

/** Cloth on the table, as long as it needs to be; its grain runs along the length. */
export interface Cloth {
  /** mm, selvages included. */
  readonly width: number;
  /** mm along each edge that is not cut into. */
  readonly selvage: number;
  readonly fold: Fold;
  readonly nap: Nap;
}

/** A width as the shop states it, selvages included. */
export interface ClothWidth {
  readonly value: number;
  readonly unit: LengthUnit;
  /** A width of the other market, a little wider, which a lay on this one serves too. */
  readonly serves?: Omit<ClothWidth, 'serves'>;
}

/** Common practice, no source: the widths in which apparel cloth is sold. */
export const CLOTH_WIDTHS: readonly ClothWidth[] = [
  ...[90, 112, 140, 150].map((value) => ({ value, unit: 'cm' as const })),
  ...[36, 45, 54, 60].map((value) => ({ value, unit: 'in' as const })),
];

/**
 * One width for each pair that both markets sell alike, the narrower of the two: whoever buys either has
 * enough.
 */
export const PAIRED_WIDTHS: readonly ClothWidth[] = (
  [
    [90, 36],
    [112, 45],
    [140, 54],
    [150, 60],
  ] as const
).map(([cm, inches]) => {
  const pair = [
    { value: cm, unit: 'cm' as const },
    { value: inches, unit: 'in' as const },
  ].sort((a, b) => clothWidth(a) - clothWidth(b));
  const [narrow, wide] = pair as [ClothWidth, ClothWidth];
  return { ...narrow, serves: wide };
});

/** A stated width in mm, selvages included. */
export function clothWidth({ value, unit }: ClothWidth): number {
  return toMillimeters(value, unit);
}
