/** What a command needs of the world; tests give their own. */
import { isAbsolute, join } from 'node:path';
import { decodedDrawing } from '../dxf/decode';
import type { BinaryFile, ResultFile } from '../files/result-file';
import { decodedTable } from '../table/decode';
import { readBounded } from './read-file';
import type { WriteOrder, WrittenFiles } from './write-files';
import { writeFiles } from './write-files';

/**
 * 0 nothing failed; 1 results were written but a check failed; 2 wrong input, nothing written; 3 the
 * program itself failed; the others a signal before anything was written.
 */
export type ExitCode = 0 | 1 | 2 | 3 | 129 | 130 | 143;

/** What a command needs of the files that its call names. */
export interface Files {
  /** The text of a file. Throws InputError `file-unreadable`. */
  readonly readText: (path: string) => string;
  /** Writes all files into a folder, or none. Throws what `writeFiles` throws. */
  readonly write: (
    folder: string,
    files: readonly (ResultFile | BinaryFile)[],
    order: WriteOrder,
  ) => Promise<WrittenFiles>;
}

/** What a command needs of the world: its streams, in text, and its files. */
export interface Io extends Files {
  readonly out: (text: string) => void;
  readonly error: (text: string) => void;
  /** True where the output may be colored. */
  readonly color: boolean;
}

/** The process's own streams and files; colored only on a terminal, and never with NO_COLOR. */
export function processIo(): Io {
  return {
    out: (text) => void process.stdout.write(text),
    error: (text) => void process.stderr.write(text),
    ...filesFrom('.'),
    color: process.stdout.isTTY && !process.env.NO_COLOR,
  };
}

/**
 * The real file system; relative paths start in `folder`, and are told as they were given. What was
 * read by it is not overwritten by it.
 */
export function filesFrom(folder: string): Files {
  const at = (path: string): string => (isAbsolute(path) ? path : join(folder, path));
  const inputs = new Set<string>();
  return {
    readText: (path) => {
      // Drawings, and the rule tables that go with them, may say their own code page.
      const isDrawing = /\.(dxf|rul)$/iu.test(path);
      const { bytes, identity } = readBounded(path, at(path));
      inputs.add(identity);
      return isDrawing ? decodedDrawing(bytes, path) : decodedTable(bytes);
    },
    write: (path, files, order) => writeFiles(path, at(path), files, order, inputs),
  };
}
