/** Edges that are sewn together and no longer match in a garment made by a sheet. */
import { SEAM_MATCH } from '../../tolerance';
import type { WornSize } from './worn-sheet';

/** A pair of edges in the sizes in which the sheet sets them apart. */
export interface SeamGap {
  /** Such as `front and back side seams`. */
  readonly words: string;
  /** mm by which the edges differ, first less second. */
  readonly sizes: readonly { readonly label: string; readonly gap: number }[];
}

/** Pairs whose gap the sheet changes by more than SEAM_MATCH: the seams, and the legs of darts. */
export function seamGaps(worn: readonly WornSize[]): readonly SeamGap[] {
  const names = worn[0]?.gaps.map(({ words }) => words) ?? [];
  return names.flatMap((words, i): SeamGap[] => {
    const sizes = worn.flatMap(({ label, gaps }) => {
      const { right = NaN, sheet = NaN } = gaps[i] ?? {};
      return Math.abs(sheet - right) > SEAM_MATCH ? [{ label, gap: sheet }] : [];
    });
    return sizes.length === 0 ? [] : [{ words, sizes }];
  });
}
