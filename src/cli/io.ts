/** What a command needs of the world; tests give their own. */
import { readFileSync } from 'node:fs';
import { isAbsolute, join } from 'node:path';
import { decodedDrawing } from '../dxf/decode';
import { InputError } from '../errors';
import type { BinaryFile, ResultFile } from '../files/result-file';
import type { WrittenFiles } from './write-files';
import { writeFiles } from './write-files';

/** 0 nothing failed; 1 results were written but a check failed; 2 wrong input, nothing written. */
export type ExitCode = 0 | 1 | 2;

/** What a command needs of the files that its call names. */
export interface Files {
  /** The text of a file. Throws InputError `file-unreadable`. */
  readonly readText: (path: string) => string;
  /** Writes all files into a folder, or none. Throws InputError `file-unwritable`. */
  readonly write: (folder: string, files: readonly (ResultFile | BinaryFile)[]) => WrittenFiles;
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

/** The real file system; relative paths start in `folder`, and are told as they were given. */
export function filesFrom(folder: string): Files {
  const at = (path: string): string => (isAbsolute(path) ? path : join(folder, path));
  return {
    readText: (path) => readText(path, at(path)),
    write: (path, files) => writeFiles(path, at(path), files),
  };
}

function readText(path: string, at: string): string {
  let bytes: Buffer;
  try {
    bytes = readFileSync(at);
  } catch (error) {
    throw new InputError('file-unreadable', {
      what: 'the file cannot be read',
      allowed: 'the path of a readable CSV file',
      got: error instanceof Error ? error.message : String(error),
      place: { file: path },
    });
  }
  // Drawings, and the rule tables that go with them, are not always in UTF-8.
  return /\.(dxf|rul)$/iu.test(path) ? decodedDrawing(bytes, path) : bytes.toString('utf8');
}
