/** What is being done, on one line of a terminal that goes before anything else is said. */

import type { LateLine } from './late-line';
import { lateLine } from './late-line';

/** Back to the first column, and the line erased from there (ECMA-48: CR, EL). */
const ERASE = '\r\u001b[K';

/** A line that is shown for as long as a step takes. */
export interface Progress {
  /** Shows the words in the place of those before. */
  readonly show: (words: string) => void;
  /** Takes them away, if any are shown. */
  readonly clear: () => void;
}

/** ms. What is done sooner needs no words. The engine's own figure. */
const SOON = 1_000;

/**
 * Progress by way of `write`; none where `isTerminal` is false, as a pipe would keep every line, and none
 * in the first second: `late` shows a line after some ms, if it is not taken before.
 */
export function progressLine(
  write: (text: string) => void,
  isTerminal: boolean,
  late: (text: string, wait: number) => LateLine = lateLine,
): Progress {
  let begun: number | undefined;
  let line: LateLine | undefined;
  const take = (): boolean => line?.take() ?? false;
  return {
    show: (words) => {
      if (!isTerminal) return;
      const text = `${ERASE}${words} ...`;
      begun ??= performance.now();
      if (take() || performance.now() - begun >= SOON) {
        write(text);
        line = { take: () => true };
      } else line = late(text, begun + SOON - performance.now());
    },
    clear: () => {
      if (take()) write(ERASE);
      line = undefined;
    },
  };
}
