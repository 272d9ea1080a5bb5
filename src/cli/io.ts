/** What a command needs of the world; tests give their own. */
import { readFileSync } from 'node:fs';
import { decodedDrawing } from '../dxf/decode';
import { InputError } from '../errors';

/** 0 nothing failed; 1 results were written but a check failed; 2 wrong input, nothing written. */
export type ExitCode = 0 | 1 | 2;

export interface Io {
  readonly out: (text: string) => void;
  readonly error: (text: string) => void;
  readonly readText: (path: string) => string;
  /** True where the output may be colored. */
  readonly color: boolean;
}

/** The process's own streams and files; colored only on a terminal, and never with NO_COLOR. */
export function processIo(): Io {
  return {
    out: (text) => void process.stdout.write(text),
    error: (text) => void process.stderr.write(text),
    readText,
    color: process.stdout.isTTY && !process.env.NO_COLOR,
  };
}

function readText(path: string): string {
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
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
