/** The words for cloth on the table. */
import type { ClothWidth, Fold } from '../fabric/cloth';
import { isFoldedAtAll } from '../fabric/alike-lays';
import type { Lay } from '../fabric/lay';
import { SAME_PLACE } from '../tolerance';
import type { LengthUnit } from '../units';

/** How cloth is folded, in the words of home sewing (common practice, no source). */
export const FOLD_WORDS: Readonly<Record<Fold, string>> = {
  folded: 'folded once',
  middle: 'folded to the middle',
  open: 'open flat',
};

/** What is done with the cloth before pieces are laid on it; `length` tells mm as the reader wants. */
export function foldingTold(lay: Lay, length: (mm: number) => string): string {
  const { cloth, folding, folded } = lay;
  if (!isFoldedAtAll(lay)) return 'open flat, in one layer';
  const strip = length(folding.strip);
  const isEven = folding.strip <= SAME_PLACE;
  const how =
    cloth.fold === 'folded'
      ? isEven
        ? 'folded lengthwise once, selvage on selvage'
        : `folded lengthwise once, one selvage ${strip} short of the other`
      : isEven
        ? 'both selvages folded in to the middle'
        : `both selvages folded in toward the middle, ${strip} between them`;
  const isOpened = lay.placements.some(({ zone }) => zone === 'opened-end');
  return isOpened ? `${how}; past ${length(folded)} it is opened out` : how;
}

/**
 * Widths unit by unit with those they serve, that of the market first: `90, 150 cm, 36, 60 in`; `any width` if
 * they are all of several.
 */
export function widthsTold(widths: readonly ClothWidth[], all: number, market: LengthUnit): string {
  if (all > 1 && widths.length === all) return 'any width';
  const stated = widths.flatMap((width) => [width, ...(width.serves ? [width.serves] : [])]);
  const units = market === 'in' ? (['in', 'cm'] as const) : (['cm', 'in'] as const);
  return units
    .map((unit) => {
      const values = stated.filter((width) => width.unit === unit).map(({ value }) => value);
      return values.length === 0 ? '' : `${values.join(', ')} ${unit}`;
    })
    .filter((words) => words !== '')
    .join(', ');
}
