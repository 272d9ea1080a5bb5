/** The cloth to buy as tables among those of a printed pattern. */
import type { ClothName, ClothWidth, Fold } from '../fabric/cloth';
import type { BuyLength, FabricNeed } from '../fabric/fabric-needs';
import { isLay } from '../fabric/lay';
import { FOLD_WORDS, widthsTold } from '../render/lay-captions';
import { layPictures } from './lay-pictures';
import type { LengthUnit } from '../units';
import { yardsTold } from '../units';
import { inMarket } from '../print/size-table';
import type { SizeRow, SizeTable } from '../print/size-table';

/**
 * One table a cloth with a row for each width and way of folding, those with the same numbers in one
 * row. Only ways that are `worthLaying` should be given. A dash stands where the pieces do not go on
 * the cloth. The unit of the market comes first. Pictures of
 * the lays go with it unless they are not wanted.
 */
export function fabricTables(
  needs: readonly FabricNeed[],
  {
    pictured = true,
    unit = 'cm',
  }: { readonly pictured?: boolean; readonly unit?: LengthUnit } = {},
): readonly SizeTable[] {
  return [...new Set(needs.map(({ cloth }) => cloth))].map((cloth, i) => {
    const own = needs.filter((need) => need.cloth === cloth);
    const widths = new Set(own.map(({ width }) => width)).size;
    const table = {
      heading: heading(cloth, unit),
      sizes: own[0]?.sizes.map(({ label }) => label) ?? [],
      rows: joined(own).map((one) => row(one, widths, unit)),
      // What holds for every cloth is said once.
      notes: [
        ...(i > 0 ? [] : [[NOTE, ...(pictured ? picturesTold(needs) : [])].join(' ')]),
        ...(own.some(hasMisfit) ? [MISFIT] : []),
        ...(own.some(isRaised) ? [RAISED] : []),
      ],
      ...(pictured ? { pictures: layPictures(own, unit) } : {}),
    };
    return inMarket(table, unit);
  });
}

const NOTE =
  'Enough for cloth with a nap: all pieces lie the same way up. Laid on the narrower of the widths named; ' +
  '5 % is added for shrinkage and straight ends.';
const MISFIT = 'A dash: the pieces do not fit.';
const PICTURED =
  'The pictures show how the pieces lie on the cloth that is named below each; a piece too small for its name has ' +
  'its number.';
const ONE_LAYER = 'One layer: cut from a single layer of folded cloth.';
const ONE_LAYER_LAST =
  'One layer, last: cut from a single layer of folded cloth when the others are cut.';
const RAISED = 'Where a larger size came out shorter, it takes as much as the smaller one.';

/** What the words in the pictures mean, of those that stand in one. */
function picturesTold(needs: readonly FabricNeed[]): readonly string[] {
  const zones = new Set(
    needs.flatMap(({ sizes }) =>
      sizes.flatMap(({ lay }) => (isLay(lay) ? lay.placements.map(({ zone }) => zone) : [])),
    ),
  );
  return [
    PICTURED,
    ...(zones.has('strip') ? [ONE_LAYER] : []),
    ...(zones.has('rest') ? [ONE_LAYER_LAST] : []),
  ];
}

function hasMisfit({ sizes }: FabricNeed): boolean {
  return sizes.some(({ buy }) => buy === undefined);
}

function isRaised({ sizes }: FabricNeed): boolean {
  return sizes.some((size) => size.isRaised);
}

function heading(cloth: ClothName, unit: LengthUnit): string {
  const units = unit === 'in' ? 'yards and centimeters' : 'centimeters and yards';
  return `Cloth to buy, ${cloth}, in ${units}, by its width and fold`;
}

/**
 * The needs without cloth folded to the middle where that takes no less, in any size, than cloth
 * folded once.
 */
export function worthLaying(needs: readonly FabricNeed[]): readonly FabricNeed[] {
  return needs.filter((need) => {
    if (need.fold !== 'middle') return true;
    const once = needs.find(
      (other) =>
        other.fold === 'folded' &&
        other.cloth === need.cloth &&
        other.width === need.width &&
        other.nap === need.nap,
    );
    return need.sizes.some(({ buy }, i) => isLess(buy, once?.sizes[i]?.buy));
  });
}

function isLess(a: BuyLength | undefined, b: BuyLength | undefined): boolean {
  return a !== undefined && (b === undefined || a.centimeters < b.centimeters);
}

/** Widths and ways of folding that need the same in every size. */
interface Joined {
  readonly widths: readonly ClothWidth[];
  readonly folds: readonly Fold[];
  readonly buys: readonly (BuyLength | undefined)[];
}

/** First the ways that need the same on one width, then the widths for which that is so. */
function joined(needs: readonly FabricNeed[]): readonly Joined[] {
  const ways = new Map<string, Joined>();
  for (const { width, fold, sizes } of needs) {
    const buys = sizes.map(({ buy }) => buy);
    const key = JSON.stringify([width, buys]);
    const folds = [...(ways.get(key)?.folds ?? []), fold];
    ways.set(key, { widths: [width], folds, buys });
  }
  const rows = new Map<string, Joined>();
  for (const { widths, folds, buys } of ways.values()) {
    const key = JSON.stringify([folds, buys]);
    rows.set(key, { widths: [...(rows.get(key)?.widths ?? []), ...widths], folds, buys });
  }
  return [...rows.values()];
}

function row({ widths, folds, buys }: Joined, all: number, market: LengthUnit): SizeRow {
  return {
    name: widthsTold(widths, all, market),
    detail: folds.map((fold) => FOLD_WORDS[fold]).join(' or '),
    lines: [
      { unit: 'cm', cells: buys.map((buy) => (buy === undefined ? '-' : `${buy.centimeters}`)) },
      { unit: 'yd', cells: buys.map((buy) => (buy === undefined ? '-' : yardsTold(buy.yards))) },
    ],
  };
}
