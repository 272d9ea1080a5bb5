/** A file of lines read part by part, each of whole lines, from any place on. */
import type { FileHandle } from 'node:fs/promises';
import { InputError } from '../../errors';

/** Whole lines of a list, and where they stand in it. */
export interface ListPart {
  /** Counted from 0 in this run. */
  readonly index: number;
  /** The row of its first line, counted from 1. */
  readonly row: number;
  readonly bytes: Uint8Array;
  /** Where in the file it ends, and the row that begins there. */
  readonly end: number;
  readonly nextRow: number;
}

/** Bytes of a line at most; more is no list of bodies. */
const LONGEST_LINE = 1 << 20;
const LINE_FEED = 10;

/** Parts of some `size` bytes. `given` names the list. Throws InputError `file-too-large` for a line that is too long. */
export async function* listParts(
  file: FileHandle,
  given: string,
  from: { readonly offset: number; readonly row: number },
  size: number,
): AsyncGenerator<ListPart> {
  let { offset, row } = from;
  let rest = new Uint8Array();
  for (let index = 0; ;) {
    const { bytesRead, buffer } = await file.read(
      new Uint8Array(size),
      0,
      size,
      offset + rest.length,
    );
    const bytes = new Uint8Array(rest.length + bytesRead);
    bytes.set(rest);
    bytes.set(buffer.subarray(0, bytesRead), rest.length);
    const isLast = bytesRead === 0;
    const length = isLast ? bytes.length : bytes.lastIndexOf(LINE_FEED) + 1;
    if (length > 0) {
      const part = bytes.slice(0, length);
      const nextRow = row + linesIn(part);
      yield { index: index++, row, bytes: part, end: offset + length, nextRow };
      offset += length;
      row = nextRow;
    }
    if (isLast) return;
    rest = bytes.slice(length);
    if (rest.length > LONGEST_LINE)
      throw new InputError('file-too-large', {
        what: 'a line is too long',
        allowed: `${LONGEST_LINE} bytes`,
        got: `${rest.length} or more`,
        place: { file: given, row },
      });
  }
}

function linesIn(bytes: Uint8Array): number {
  let lines = 0;
  for (let at = bytes.indexOf(LINE_FEED); at >= 0; at = bytes.indexOf(LINE_FEED, at + 1)) lines++;
  return lines;
}
