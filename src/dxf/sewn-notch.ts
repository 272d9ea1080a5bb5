/**
 * Where a notch of the cut line meets the seam line, as words of our own: a notch has one place in an
 * exchange file, and a corner with unequal allowances does not say which place of the seam it is for.
 */
import { D6673_LAYERS } from './d6673-layers';
import type { BlockContent, BlockPoint } from './block-point';
import { blockPoint, entitiesOn } from './block-point';
import type { DxfEntity } from './entity';

/** `SEWN NOTCH: 3`, at the place on the seam line of the third notch of the block. */
export function sewnNotchWords(number: number): string {
  return `SEWN NOTCH: ${number}`;
}

const SEWN_NOTCH = /^SEWN NOTCH: (\d+)$/u;

/** The places by the name of their notch, for those of `notches` that such words are there for. */
export function sewnNotches(
  block: BlockContent,
  notches: ReadonlySet<string>,
): ReadonlyMap<string, { readonly sewn: BlockPoint; readonly words: DxfEntity }> {
  const layer = D6673_LAYERS.annotation;
  return new Map(
    entitiesOn(block, layer, 'TEXT').flatMap((words) => {
      const number = SEWN_NOTCH.exec(words.words)?.[1];
      const [at] = words.points;
      const notch = `cut_notch_${number}`;
      if (number === undefined || at === undefined || !notches.has(notch)) return [];
      const { row } = words;
      const name = `sewn_notch_${number}`;
      // It is no mark of its own, but a place to which one reaches.
      const sewn = blockPoint(block, at, {
        name,
        kind: 'reference',
        row,
        edge: '',
        layers: [layer],
      });
      return [[notch, { sewn, words }]];
    }),
  );
}
