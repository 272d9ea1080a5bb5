/** The bytes of a file, up to a bound; a pipe is waited for, but not forever. */
import {
  closeSync,
  constants,
  existsSync,
  fstatSync,
  openSync,
  readSync,
  readdirSync,
  statSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { InputError } from '../errors';
import { nearNames } from '../table/near-names';

/** Bytes of a table or a drawing: far more than its most lines need. The engine's own figure. */
const MOST_BYTES = 10_000_000;
/** ms. How long a pipe may have no writer, or a writer may take for its first byte or the next. */
const NO_WRITER = 500;
const SILENT_WRITER = 30_000;
/** ms between two looks at a pipe, and bytes taken from it at once. */
const LOOK = 5;
const CHUNK = 1 << 16;

/** Where a file is, and the number by which the system knows it under all its names. */
export interface ReadFile {
  readonly bytes: Buffer;
  readonly identity: string;
}

/** What two names of one file share, through links of either kind. */
function identityOf({ dev, ino }: { readonly dev: bigint; readonly ino: bigint }): string {
  return `${dev}:${ino}`;
}

/** The same of what is at a path; undefined where there is nothing. */
export function identityAt(path: string): string | undefined {
  const stat = statSync(path, { bigint: true, throwIfNoEntry: false });
  return stat && identityOf(stat);
}

/**
 * Reads the file at a path, which is told as it was `given`. Throws InputError `file-unreadable`, or
 * `file-too-large` before more than the bound is read.
 */
export function readBounded(given: string, path: string): ReadFile {
  let file: number | undefined;
  try {
    // Without waiting: a pipe that nobody writes to would hold the program forever.
    file = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    return readOpen(given, file);
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT')
      throw missing(given, path);
    throw asUnreadable(given, error);
  } finally {
    if (file !== undefined) closeSync(file);
  }
}

/** Reads the standard input to its end, as `readBounded` reads a file. */
export function readStandardInput(given: string): ReadFile {
  try {
    return readOpen(given, process.stdin.fd);
  } catch (error) {
    throw asUnreadable(given, error);
  }
}

/** What an open file, a pipe or a terminal still has, up to the bound. */
function readOpen(given: string, file: number): ReadFile {
  const stat = fstatSync(file, { bigint: true });
  const identity = identityOf(stat);
  if (stat.isDirectory()) throw unreadable(given, 'a folder');
  if (stat.isFile() && stat.size > MOST_BYTES) throw tooLarge(given, `${stat.size} bytes`);
  return { bytes: readAll(file, given, stat.isFIFO()), identity };
}

function readAll(file: number, given: string, isPipe: boolean): Buffer {
  const chunks: Buffer[] = [];
  let [length, waited] = [0, 0];
  const wait = (longest: number, reason: string): void => {
    if (waited > longest) throw unreadable(given, reason);
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, LOOK);
    waited += LOOK;
  };
  for (;;) {
    const chunk = Buffer.allocUnsafe(CHUNK);
    const count = readOrWait(file, chunk);
    if (count === undefined) {
      wait(SILENT_WRITER, 'a pipe to which nothing is written');
    } else if (count > 0) {
      waited = 0;
      length += count;
      if (length > MOST_BYTES) throw tooLarge(given, 'more than that');
      chunks.push(chunk.subarray(0, count));
    } else if (isPipe && length === 0) {
      wait(NO_WRITER, 'a pipe without a writer');
    } else {
      return Buffer.concat(chunks);
    }
  }
}

/** Bytes read, 0 at the end, or undefined where they are not there yet. */
function readOrWait(file: number, chunk: Buffer): number | undefined {
  try {
    return readSync(file, chunk);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EAGAIN') return undefined;
    // The end of a pipe on Windows.
    if (code === 'EOF') return 0;
    throw error;
  }
}

/** An error of the system as one of input; one of input as it is. */
function asUnreadable(given: string, error: unknown): InputError {
  if (error instanceof InputError) return error;
  return unreadable(given, error instanceof Error ? error.message : String(error));
}

function tooLarge(given: string, got: string): InputError {
  return new InputError('file-too-large', {
    what: 'the file is too large',
    allowed: `${MOST_BYTES / 1_000_000} MB`,
    got,
    place: { file: given },
  });
}

/** A file that is not there, with the files beside it whose names are nearly its own. */
function missing(given: string, path: string): InputError {
  const folder = dirname(path);
  const names = existsSync(folder) ? readdirSync(folder) : undefined;
  const near = nearNames(basename(path), names ?? []).map((name) => join(dirname(given), name));
  return new InputError('file-unreadable', {
    what: names === undefined ? 'there is no such folder' : 'there is no such file',
    ...(near.length > 0 ? { near } : { allowed: 'the path of a file that is there' }),
    place: { file: given },
  });
}

/** What is told of a file that is there and cannot be read. */
export function unreadable(given: string, got: string): InputError {
  return new InputError('file-unreadable', {
    what: 'the file cannot be read',
    allowed: 'the path of a readable CSV file',
    got,
    place: { file: given },
  });
}
