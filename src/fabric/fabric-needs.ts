/** The cloth to buy: for every size, cloth and width, from a lay of the pieces. */
import type { CutPiece } from '../pattern/cut-piece';
import { HALF_STEP } from '../tolerance';
import { toMillimeters, yardsToMillimeters } from '../units';
import type { Cloth, ClothName, ClothWidth, Fold, Nap } from './cloth';
import { CLOTH_NAMES, CLOTH_WIDTHS, FOLDS, NAPS, clothWidth } from './cloth';
import type { Lay, NoLay } from './lay';
import { isLay, opened } from './lay';
import { layShapes } from './shapes';
import { shortestLay } from './shortest-lay';

/** One size ready to be laid. */
export interface CutSize {
  readonly label: string;
  readonly pieces: readonly CutPiece[];
}

/** What cloth is looked at; the usual cloth where nothing is said. */
export interface FabricOptions {
  /** The usual ones if absent. */
  readonly widths?: readonly ClothWidth[];
  readonly folds?: readonly Fold[];
  readonly naps?: readonly Nap[];
  /** mm along each edge that is not cut into. */
  readonly selvage?: number;
  /** Share of the lay that is bought besides it. */
  readonly spare?: number;
}

/** mm. Common practice, no source: selvages are 1 to 1.5 cm and part of the width stated. */
export const SELVAGE = 10;
/** Common practice, no source: 5 % for what shrinks in the wash and to straighten the ends. */
export const SPARE = 0.05;

/** What one size needs: the lay, and the length to buy rounded up to what shops cut. */
export interface SizeNeed {
  readonly label: string;
  readonly lay: Lay | NoLay;
  /** Undefined where the pieces do not go on the cloth. */
  readonly buy: BuyLength | undefined;
  /** A smaller size takes more than this lay, so that what it takes is bought. */
  readonly isRaised: boolean;
}

/** One length in two roundings. */
export interface BuyLength {
  /** A multiple of 5 cm. */
  readonly centimeters: number;
  /** A multiple of 1/8 yd. */
  readonly yards: number;
}

/** One row of the table: a cloth in one width, fold and nap. */
export interface FabricNeed {
  readonly cloth: ClothName;
  readonly width: ClothWidth;
  readonly fold: Fold;
  readonly nap: Nap;
  /** In the order of the sizes given. */
  readonly sizes: readonly SizeNeed[];
}

/**
 * The needs of all sizes, cloth by cloth, then width, fold and nap in the order given. Cloths that
 * no piece is cut from are left out. A lay on narrower cloth, with a nap, or on folded cloth is
 * also one on wider, plain or open cloth: so none of these ever needs more than the other.
 */
export function fabricNeeds(
  sizes: readonly CutSize[],
  {
    widths = CLOTH_WIDTHS,
    folds = FOLDS,
    naps = NAPS,
    selvage = SELVAGE,
    spare = SPARE,
  }: FabricOptions = {},
): readonly FabricNeed[] {
  const used = CLOTH_NAMES.filter((name) => sizes.some(({ pieces }) => isCutFrom(pieces, name)));
  return used.flatMap((cloth) => {
    const lays = sizes.map(({ pieces }) => laysOf(pieces, cloth, { widths, folds, naps, selvage }));
    return widths.flatMap((width) =>
      folds.flatMap((fold) =>
        naps.map((nap) => ({
          cloth,
          width,
          fold,
          nap,
          sizes: neverFalling(
            sizes.map(({ label }, i) => {
              const lay = lays[i]?.get(keyOf({ width: clothWidth(width), fold, nap }));
              if (lay === undefined) throw new RangeError(`no lay of size ${label}`);
              const buy = isLay(lay) ? buyLength(lay.length, spare) : undefined;
              return { label, lay, buy, isRaised: false };
            }),
          ),
        })),
      ),
    );
  });
}

/**
 * The same needs, in which no size buys less than one whose pieces have less area: a lay is found by
 * a search, and that of a larger size may come out shorter.
 */
function neverFalling(needs: readonly SizeNeed[]): readonly SizeNeed[] {
  const area = ({ lay }: SizeNeed): number => (isLay(lay) ? lay.area : Infinity);
  return needs.map((need) => {
    const { buy } = need;
    if (buy === undefined) return need;
    const smaller = needs.flatMap((other) => (area(other) < area(need) ? (other.buy ?? []) : []));
    const centimeters = Math.max(buy.centimeters, ...smaller.map((b) => b.centimeters));
    const yards = Math.max(buy.yards, ...smaller.map((b) => b.yards));
    const isRaised = centimeters > buy.centimeters || yards > buy.yards;
    return { ...need, buy: { centimeters, yards }, isRaised };
  });
}

/** A length of cloth with what is bought besides it, rounded up. */
function buyLength(length: number, spare = SPARE): BuyLength {
  const whole = length * (1 + spare);
  const roundedUp = (step: number): number => Math.ceil(whole / step - HALF_STEP);
  return {
    centimeters: 5 * roundedUp(toMillimeters(5, 'cm')),
    yards: roundedUp(yardsToMillimeters(1 / 8)) / 8,
  };
}

/** The need that takes least of the cloth; of those that round to the same the first given. */
export function leastNeed(needs: readonly SizeNeed[]): SizeNeed | undefined {
  const possible = needs.filter(({ buy }) => buy !== undefined);
  const least = Math.min(...possible.map(({ buy }) => buy?.centimeters ?? Infinity));
  return possible.find(({ buy }) => buy?.centimeters === least) ?? needs[0];
}

function isCutFrom(pieces: readonly CutPiece[], name: ClothName): boolean {
  return pieces.some(({ piece }) => piece.plan.cuttings.some(({ cloth }) => cloth === name));
}

type Lays = ReadonlyMap<string, Lay | NoLay>;

function keyOf({ width, fold, nap }: Pick<Cloth, 'width' | 'fold' | 'nap'>): string {
  return `${width} ${fold} ${nap}`;
}

/** Every lay of one size, the more restricted before those for which it serves as well. */
function laysOf(
  pieces: readonly CutPiece[],
  name: ClothName,
  { widths, folds, naps, selvage }: Required<Omit<FabricOptions, 'spare'>>,
): Lays {
  const lays = new Map<string, Lay | NoLay>();
  const known = (cloth: Pick<Cloth, 'width' | 'fold' | 'nap'>): readonly Lay[] => {
    const lay = lays.get(keyOf(cloth));
    return lay !== undefined && isLay(lay) ? [lay] : [];
  };
  const ascending = [...new Set(widths.map(clothWidth))].sort((a, b) => a - b);
  const usedFolds = FOLDS.filter((each) => folds.includes(each));
  for (const nap of NAPS.filter((each) => naps.includes(each))) {
    const open = layShapes(pieces, name, { fold: 'open', nap });
    const doubled = layShapes(pieces, name, { fold: 'folded', nap });
    for (const fold of usedFolds) {
      const shapes = fold === 'open' ? open : doubled;
      for (const [i, width] of ascending.entries()) {
        const cloth: Cloth = { width, selvage, fold, nap };
        const folded = FOLDS.filter((other) => fold === 'open' && other !== 'open');
        const serving = [
          ...known({ width: ascending[i - 1] ?? NaN, fold, nap }),
          ...(nap === 'without' ? known({ width, fold, nap: 'with' }) : []),
          ...folded.flatMap((other) => known({ width, fold: other, nap }).map(opened)),
        ];
        lays.set(keyOf(cloth), shortestLay(shapes, cloth, serving));
      }
    }
  }
  return lays;
}
