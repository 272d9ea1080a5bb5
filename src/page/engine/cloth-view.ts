/** The cloth to buy by size and width, and a lay, in the words and the drawing of the command line. */
import type { ClothName } from '../../fabric/cloth';
import { CLOTH_WIDTHS, FOLDS, NAPS, USUAL_NAP } from '../../fabric/cloth';
import type { BuyLength, FabricNeed, SizeNeed } from '../../fabric/fabric-needs';
import { SPARE, leastNeed } from '../../fabric/fabric-needs';
import { isLay } from '../../fabric/lay';
import { clothNeeds } from '../../files/fabric-files';
import { fabricTables, worthLaying } from '../../files/fabric-table';
import { misfitTold } from '../../files/lay-table';
import type { GradeResult } from '../../jobs/grade-result';
import { FOLD_WORDS } from '../../render/lay-captions';
import { laySheet } from '../../render/lay-sheet';
import { svg } from '../../render/svg';
import { toMillimeters, trimmed, yardsToMillimeters, yardsTold } from '../../units';
import type { AskedCloth } from '../state';
import type { Choices, ClothView, PictureView } from '../wish';

/** What a skirt needs of every cloth, laid once for all wishes about it. Throws as `clothNeeds` does. */
export type Needs = (result: GradeResult) => readonly FabricNeed[];

/** Lays with a memory of their own, of the last skirt. */
export function needsWithMemory(): Needs {
  let last: { readonly result: GradeResult; readonly needs: readonly FabricNeed[] } | undefined;
  return (result) => {
    if (last?.result !== result) last = { result, needs: clothNeeds(result) };
    return last.needs;
  };
}

/** The fold that takes least, which no cloth has for a name. */
const LEAST = 'least';
const NAP_WORDS = { with: 'with a nap', without: 'without a nap' } as const;

/** Pictures and tables of all sizes, and the lay that is asked for. */
export function clothView(
  result: GradeResult,
  needs: readonly FabricNeed[],
  asked: AskedCloth,
): ClothView {
  const isInch = result.display.unit === 'in';
  const usual = needs.filter(({ cloth, nap }) => nap === USUAL_NAP[cloth]);
  const told = worthLaying(needs.filter(({ nap }) => nap === 'with'));
  const choices = choicesOf(needs, isInch);
  return {
    pictures: [...new Set(usual.map(({ cloth }) => cloth))].map((cloth) =>
      pictureOf(usual, cloth, isInch),
    ),
    tables: fabricTables(told, { pictured: false, unit: result.display.unit }).map(
      ({ heading, sizes, rows, notes = [] }) => ({
        ...{ heading, sizes, notes },
        rows: rows.flatMap(({ name, detail = '', lines }) =>
          lines.map(({ unit, cells }) => [`${name}, ${detail}`, unit, ...cells]),
        ),
      }),
    ),
    choices,
    ...layOf(result, needs, chosenOf(asked, choices, result.range.base)),
  };
}

/** Widths of the market first. */
function choicesOf(needs: readonly FabricNeed[], isInch: boolean): ClothView['choices'] {
  const same = (names: Iterable<string>): Choices => [...names].map((name) => [name, name]);
  const widths = CLOTH_WIDTHS.toSorted(
    (a, b) => Number((b.unit === 'in') === isInch) - Number((a.unit === 'in') === isInch),
  );
  return {
    cloth: same(new Set(needs.map(({ cloth }) => cloth))),
    width: same(widths.map(widthName)),
    fold: [[LEAST, 'as takes least'], ...FOLDS.map((fold) => [fold, FOLD_WORDS[fold]] as const)],
    nap: NAPS.map((nap) => [nap, NAP_WORDS[nap]]),
    size: same((needs[0]?.sizes ?? []).map(({ label }) => label)),
  };
}

function widthName({ value, unit }: FabricNeed['width']): string {
  return `${value} ${unit}`;
}

/** What is asked for, as far as there is such a thing; otherwise the usual: the base on skirt cloth. */
function chosenOf(
  asked: AskedCloth,
  choices: ClothView['choices'],
  base: string,
): ClothView['chosen'] {
  const one = (field: keyof AskedCloth, ...usual: readonly string[]): string => {
    const names = choices[field].map(([name]) => name);
    return [asked[field] ?? '', ...usual, ...names].find((name) => names.includes(name)) ?? '';
  };
  const cloth = one('cloth');
  const first = choices.width[0]?.[0].endsWith('in') === true ? '54 in' : '140 cm';
  return {
    cloth,
    width: one('width', first),
    fold: one('fold'),
    nap: one('nap', USUAL_NAP[cloth as ClothName]),
    size: one('size', base),
  };
}

/** A line for each width of the market: what the fold that takes least needs. */
function pictureOf(usual: readonly FabricNeed[], cloth: ClothName, isInch: boolean): PictureView {
  const own = usual.filter((need) => need.cloth === cloth);
  const widths = CLOTH_WIDTHS.filter(({ unit }) => (unit === 'in') === isInch);
  return {
    title: `Cloth to buy, ${cloth} ${NAP_WORDS[USUAL_NAP[cloth]]}`,
    labels: own[0]?.sizes.map(({ label }) => label) ?? [],
    unit: isInch ? 'yd' : 'cm',
    series: widths.map((width) => {
      const ways = own.filter((need) => need.width === width);
      return {
        name: `${widthName(width)} wide`,
        values: (ways[0]?.sizes ?? []).map((_, i) => {
          const buy = leastNeed(ways.flatMap(({ sizes }) => sizes[i] ?? []))?.buy;
          return buy === undefined ? null : bought(buy, isInch);
        }),
      };
    }),
  };
}

function bought({ yards, centimeters }: BuyLength, isInch: boolean): number {
  return isInch ? yardsToMillimeters(yards) : toMillimeters(centimeters, 'cm');
}

/** The lay that is chosen, or why the pieces do not go on such a cloth. */
function layOf(
  { title }: GradeResult,
  needs: readonly FabricNeed[],
  chosen: ClothView['chosen'],
): Pick<ClothView, 'chosen' | 'told' | 'drawing'> {
  const ways = needs
    .filter(({ cloth, nap }) => cloth === chosen.cloth && nap === chosen.nap)
    .filter(({ width }) => widthName(width) === chosen.width)
    .filter(({ fold }) => chosen.fold === LEAST || fold === chosen.fold)
    .flatMap(({ sizes, width, cloth, fold }) =>
      sizes
        .filter(({ label }) => label === chosen.size)
        .map((need): SizeNeed & Pick<FabricNeed, 'width' | 'cloth' | 'fold'> => ({
          ...{ ...need, width, cloth, fold },
        })),
    );
  const least = leastNeed(ways);
  const need = ways.find((way) => way === least);
  if (need === undefined) return { chosen, told: '' };
  const { lay, buy, width, cloth, fold, label: size } = need;
  const on = `Size ${size}, ${cloth} ${chosen.width} wide, ${FOLD_WORDS[fold]}`;
  if (!isLay(lay) || buy === undefined) {
    const why = isLay(lay) ? '' : misfitTold([lay], width.unit);
    return { chosen, told: `${on}: the pieces do not go on it; ${why}.` };
  }
  const { centimeters } = buy;
  const long = yardsTold(buy.yards);
  return {
    chosen,
    told:
      `${on}: ${width.unit === 'in' ? `${long} yd or ${centimeters} cm` : `${centimeters} cm or ${long} yd`} to buy. ` +
      `The pieces fill ${trimmed(100 * lay.utilization, 0)} % of the lay.`,
    drawing: svg(laySheet({ title, size, cloth, width, lay, buy, spare: SPARE })),
  };
}
