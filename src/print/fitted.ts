/** Words made to fit. */
import { textWidth } from '../render/type';

/** The type size in mm, or a smaller one at which the words are no wider than `width` mm. */
export function fitted(words: string, size: number, width: number): number {
  return Math.min(size, width / textWidth(words, 1));
}
