/** What a command needs of the world; tests give their own. */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { isAbsolute, join } from 'node:path';
import { decodedDrawing } from '../dxf/drawing-text';
import { InputError } from '../errors';
import type { BinaryFile, ResultFile } from '../files/result-file';
import { decodedTable } from '../table/table-text';
import type { ReadFile } from './read-file';
import { readBounded, readStandardInput } from './read-file';
import { progressLine } from './progress';
import { STDIN, nameOf } from './read-named';
import type { Converse } from './conversation';
import { conversation } from './conversation';
import type { WriteOrder, WrittenFiles } from './write-files';
import { writeFiles } from './write-files';
import { earlierTexts } from './written-list';

/**
 * 0 nothing failed; 1 results were written but a check failed; 2 wrong input, nothing written; 3 the
 * program itself failed; the others a signal before anything was written.
 */
export type ExitCode = 0 | 1 | 2 | 3 | 129 | 130 | 143;

/** What a command needs of the files that its call names. */
export interface Files {
  /** Whether there is something of this name. */
  readonly exists: (path: string) => boolean;
  /** Whether that is a folder. */
  readonly isFolder: (path: string) => boolean;
  /** The names of the files in a folder, sorted; undefined for what is no folder. */
  readonly filesIn: (path: string) => readonly string[] | undefined;
  /** The text of a file, or of the standard input by `-`, once. Throws InputError `file-unreadable`. */
  readonly readText: (path: string) => string;
  /** The texts of an earlier set in a folder, of those files asked for that are as they were written. */
  readonly earlier: (
    folder: string,
    set: string,
    names: readonly string[],
  ) => ReadonlyMap<string, string>;
  /** Where a path that was given leads. */
  readonly pathOf: (path: string) => string;
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
  /** Says what a step that may take over a second does, where somebody looks on. */
  readonly progress: (words: string) => void;
  /** Asks whoever sits at the terminal; absent where nobody does. */
  readonly converse?: Converse;
}

/** The process's own streams and files; colored only on a terminal that is not dumb, and never with NO_COLOR. */
export function processIo(): Io {
  const isDumb = process.env.TERM === 'dumb';
  const { show, clear } = progressLine(
    (text) => void process.stderr.write(text),
    process.stderr.isTTY && !isDumb,
  );
  return {
    out: (text) => {
      clear();
      process.stdout.write(text);
    },
    error: (text) => {
      clear();
      process.stderr.write(text);
    },
    progress: show,
    // Questions are no results, so they go where messages do.
    ...(process.stdin.isTTY && process.stderr.isTTY
      ? { converse: conversation(process.stdin, process.stderr) }
      : {}),
    ...filesFrom('.', readStandardInput),
    color: process.stdout.isTTY && !process.env.NO_COLOR && !isDumb,
  };
}

/**
 * The real file system; relative paths start in `folder`, and are told as they were given. `stdin` reads
 * the standard input. What was read is not overwritten.
 */
export function filesFrom(folder: string, stdin: (given: string) => ReadFile): Files {
  const at = (path: string): string => (isAbsolute(path) ? path : join(folder, path));
  const inputs = new Set<string>();
  let isDrained = false;
  return {
    pathOf: at,
    exists: (path) => existsSync(at(path)),
    filesIn: (path) =>
      statSync(at(path), { throwIfNoEntry: false })?.isDirectory() === true
        ? readdirSync(at(path), { withFileTypes: true })
            .filter((entry) => !entry.isDirectory())
            .map(({ name }) => name)
            .toSorted()
        : undefined,
    isFolder: (path) => statSync(at(path), { throwIfNoEntry: false })?.isDirectory() ?? false,
    readText: (path) => {
      // Drawings, and the rule tables that go with them, may say their own code page.
      const isDrawing = /\.(dxf|rul)$/iu.test(path);
      const isPiped = path === STDIN;
      if (isPiped && isDrained) throw drained();
      isDrained ||= isPiped;
      const { bytes, identity } = isPiped ? stdin(nameOf(path)) : readBounded(path, at(path));
      inputs.add(identity);
      return isDrawing ? decodedDrawing(bytes, path) : decodedTable(bytes);
    },
    earlier: (path, set, names) => earlierTexts(at(path), set, names),
    write: (path, files, order) => writeFiles(path, at(path), files, order, inputs),
  };
}

function drained(): InputError {
  return new InputError('file-unreadable', {
    what: 'the standard input can be read once',
    allowed: '- for one file of a call, and paths for the others',
    place: { file: nameOf(STDIN) },
  });
}
