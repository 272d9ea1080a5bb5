/** Edges that are sewn together and no longer match in a garment made by a sheet. */
import { valueOf } from '../../measure/finished';
import { SEAM_MATCH } from '../../tolerance';
import type { WornSize } from './worn-sheet';

/** A pair of edges in the sizes in which the sheet sets them apart. */
export interface SeamGap {
  /** Such as `front and back side seams`. */
  readonly words: string;
  /** mm by which the edges differ, first less second. */
  readonly sizes: readonly { readonly label: string; readonly gap: number }[];
}

/** Pairs whose gap the sheet changes by more than SEAM_MATCH: the side seams, and the legs of darts. */
export function seamGaps(worn: readonly WornSize[]): readonly SeamGap[] {
  const names = worn[0]?.right.map(({ name }) => name) ?? [];
  const darts = names
    .filter((name) => name.endsWith('_inner_leg'))
    .map((inner) => ({
      words: `legs of the ${inner.replace('_inner_leg', '').replaceAll('_', ' ')}`,
      first: inner,
      second: inner.replace('_inner_leg', '_outer_leg'),
    }));
  const sides = {
    words: 'front and back side seams',
    first: 'side_seam_front',
    second: 'side_seam_back',
  };
  return [sides, ...darts].flatMap(({ words, first, second }): SeamGap[] => {
    const sizes = worn.flatMap(({ label, right, sheet }) => {
      const gap = valueOf(sheet, first) - valueOf(sheet, second);
      const own = valueOf(right, first) - valueOf(right, second);
      return Math.abs(gap - own) > SEAM_MATCH ? [{ label, gap }] : [];
    });
    return sizes.length === 0 ? [] : [{ words, sizes }];
  });
}
