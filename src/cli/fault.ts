/** The words for what is no wrong input: a fault of the program, or of the streams it writes to. */
import { printable } from '../table/characters';
import { VERSION } from '../render/version';

/** Characters of an error that are told; a longer one hides where to report it. */
const LONGEST = 300;

/** A fault of the program in one line: what happened, and where to report it. */
export function faultMessage(error: unknown): string {
  return (
    `skirtgrade: a fault of this program (${told(error)}). Please report it, with the call, its ` +
    `files and the version ${VERSION}, to whoever gave you the program.\n`
  );
}

/**
 * Output that cannot be written, such as on a full disk, in one line; `folder` has the results, if any
 * were written.
 */
export function streamFaultMessage(error: unknown, folder: string | undefined): string {
  const files =
    folder === undefined
      ? 'No file was written.'
      : `The files themselves are written, all of them, in ${printable(folder)}.`;
  return `skirtgrade: what the program says cannot be written: ${told(error)}. ${files}\n`;
}

function told(error: unknown): string {
  const text = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  return printable(text.replace(/\s+/gu, ' ').slice(0, LONGEST));
}
