/** A count with its noun in the right number. */

/** `1 size`, `2 sizes`, `0 bodies`; `plural` where it is not the word and an s. */
export function counted(count: number, word: string, plural = `${word}s`): string {
  return `${count} ${count === 1 ? word : plural}`;
}
