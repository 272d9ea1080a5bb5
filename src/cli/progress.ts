/** What is being done, on one line of a terminal that goes before anything else is said. */

/** Back to the first column, and the line erased from there (ECMA-48: CR, EL). */
const ERASE = '\r\u001b[K';

/** A line that is shown for as long as a step takes. */
export interface Progress {
  /** Shows the words in the place of those before. */
  readonly show: (words: string) => void;
  /** Takes them away, if any are shown. */
  readonly clear: () => void;
}

/** Progress by way of `write`; none where `isTerminal` is false, as a pipe would keep every line. */
export function progressLine(write: (text: string) => void, isTerminal: boolean): Progress {
  let isShown = false;
  return {
    show: (words) => {
      if (!isTerminal) return;
      isShown = true;
      write(`${ERASE}${words} ...`);
    },
    clear: () => {
      if (isShown) write(ERASE);
      isShown = false;
    },
  };
}
