/** What is written: a name, and a text or bytes. */

/** A file of text. */
export interface ResultFile {
  readonly name: string;
  readonly text: string;
  /** The text part by part, for a file so long that it should not be in memory at once. */
  readonly parts?: () => Iterable<string>;
}

/** A long file, whose parts are made when they are asked for. */
export function longFile(name: string, parts: () => Iterable<string>): ResultFile {
  return {
    name,
    parts,
    get text() {
      return [...parts()].join('');
    },
  };
}

/** A file that is not text. */
export interface BinaryFile {
  readonly name: string;
  readonly bytes: Uint8Array;
}
