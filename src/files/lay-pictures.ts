/** Small pictures of the lays behind the cloth that is told in a printed table. */
import { runsOf } from '../lists/runs';
import { grouped } from '../lists/grouped';
import { layKey } from '../fabric/alike-lays';
import type { ClothWidth } from '../fabric/cloth';
import { FOLDS } from '../fabric/cloth';
import type { BuyLength, FabricNeed } from '../fabric/fabric-needs';
import type { Lay } from '../fabric/lay';
import { isLay } from '../fabric/lay';
import { shopLength } from '../pattern/shop-length';
import { FOLD_WORDS, foldingTold, widthsTold } from '../render/lay-captions';
import { layPicture } from '../render/lay-picture';
import type { Sketch } from '../render/sketch';
import type { LengthUnit } from '../units';
import { toMillimeters, yardsToMillimeters } from '../units';

/** A lay of one size on one width. */
interface Shown {
  readonly need: FabricNeed;
  readonly label: string;
  readonly lay: Lay;
  readonly buy: BuyLength;
}

/**
 * A picture for each lay in which the pieces lie otherwise; the words below say for which widths and
 * sizes it is, and which of them is drawn: the largest size on the narrowest cloth. `unit` goes
 * first in lengths.
 */
export function layPictures(needs: readonly FabricNeed[], unit: LengthUnit): readonly Sketch[] {
  const labels = needs[0]?.sizes.map(({ label }) => label) ?? [];
  // As a reader looks for her cloth: by its width, and then by how it is folded.
  const byWidth = needs.toSorted(
    (a, b) => across(a.width) - across(b.width) || FOLDS.indexOf(a.fold) - FOLDS.indexOf(b.fold),
  );
  const all = byWidth.flatMap((need) =>
    need.sizes.flatMap(({ label, lay, buy }): Shown[] =>
      isLay(lay) && buy !== undefined ? [{ need, label, lay, buy }] : [],
    ),
  );
  const widths = new Set(needs.map(({ width }) => width)).size;
  return [...grouped(all, ({ lay }) => layKey(lay)).values()].map((group) =>
    picture(group, labels, widths, unit),
  );
}

function across({ value, unit }: ClothWidth): number {
  return toMillimeters(value, unit);
}

function picture(
  group: readonly Shown[],
  labels: readonly string[],
  all: number,
  unit: LengthUnit,
): Sketch {
  const [drawn] = group.toSorted(
    (a, b) => a.lay.cloth.width - b.lay.cloth.width || b.lay.area - a.lay.area,
  );
  if (drawn === undefined) throw new RangeError('no lay to be pictured');
  const { need, lay, buy, label } = drawn;
  const { width } = need;
  const folds = new Set(group.map((shown) => FOLD_WORDS[shown.need.fold]));
  const how = foldingTold(lay, (mm) => shopLength(mm, { unit }));
  return layPicture({
    lay,
    bought:
      width.unit === 'in' ? yardsToMillimeters(buy.yards) : toMillimeters(buy.centimeters, 'cm'),
    captions: [
      [...folds].join(' or '),
      whoseTold(group, labels, all, unit),
      `Drawn: ${labels.length > 1 ? `size ${label} on ` : ''}${widthsTold([width], Infinity, unit)}, ${how}.`,
    ],
  });
}

/** `112 cm, 45 in: sizes 2 to 8; 140 cm: size 24`. */
function whoseTold(
  group: readonly Shown[],
  labels: readonly string[],
  all: number,
  market: LengthUnit,
): string {
  const widths = [...grouped(group, ({ need }) => need.width)].map(([width, own]) => ({
    width,
    sizes: sizesTold(
      own.map(({ label }) => label),
      labels,
    ),
  }));
  return [...grouped(widths, ({ sizes }) => sizes)]
    .map(([sizes, on]) => {
      const told = widthsTold(
        on.map(({ width }) => width),
        all,
        market,
      );
      return labels.length > 1 ? `${told}: ${sizes}` : told;
    })
    .join('; ');
}

/** Labels as they follow each other: `sizes 2 to 8, 12`. */
function sizesTold(own: readonly string[], labels: readonly string[]): string {
  const shown = labels.filter((label) => own.includes(label));
  const runs = runsOf(shown, (label, last) => labels[labels.indexOf(label) - 1] === last)
    .map(([from = '', ...more]) => [from, ...more.slice(-1)].join(more.length > 1 ? ' to ' : ', '))
    .join(', ');
  return `${shown.length > 1 ? 'sizes' : 'size'} ${runs}`;
}
