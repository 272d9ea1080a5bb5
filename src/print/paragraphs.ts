/** Short texts below each other in a column. */
import { point } from '../geometry/point';
import { paragraph } from '../render/furniture';
import type { Group } from '../render/scene';

/** A text of one size in mm. */
export interface Paragraph {
  readonly words: string;
  readonly size: number;
  readonly weight?: 'normal' | 'bold';
}

/** The column with its top left corner at (`left`, `top`), and the level below it. */
export function paragraphs(
  texts: readonly Paragraph[],
  left: number,
  top: number,
  width: number,
): { readonly group: Group; readonly bottom: number } {
  let y = top;
  const children = texts.flatMap(({ words, size, weight }) => {
    const set = paragraph(words, size, width, y, weight);
    y = set.bottom + size / 2;
    return set.shapes;
  });
  return { group: { kind: 'group', offset: point(left, 0), children }, bottom: y };
}
