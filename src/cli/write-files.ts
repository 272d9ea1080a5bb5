/** Writes a set of files so that each appears whole or not at all. */
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { InputError } from '../errors';
import type { BinaryFile, ResultFile } from '../files/result-file';

/** What a run left on the disk. */
export interface WrittenFiles {
  readonly folder: string;
  /** In the order in which they were given. */
  readonly names: readonly string[];
  /** Size drawings that lie in the folder from an earlier run and do not belong to this one. */
  readonly leftovers: readonly string[];
}

/**
 * Writes every file under another name first and renames them only when all are on disk. The folder
 * is told as it was `given`. Throws InputError `file-unwritable`, leaving the folder as it was.
 */
export function writeFiles(
  given: string,
  folder: string,
  files: readonly (ResultFile | BinaryFile)[],
): WrittenFiles {
  const created = firstMissing(folder);
  const draft = (name: string): string => join(folder, `.${name}.${process.pid}.part`);
  try {
    mkdirSync(folder, { recursive: true });
    for (const { name } of files) refuseFolder(join(folder, name));
    for (const file of files) {
      if ('parts' in file && file.parts !== undefined) writeParts(draft(file.name), file.parts());
      else writeFileSync(draft(file.name), 'bytes' in file ? file.bytes : file.text);
    }
    for (const { name } of files) renameSync(draft(name), join(folder, name));
  } catch (error) {
    discard(created === undefined ? files.map(({ name }) => draft(name)) : [created]);
    throw new InputError('file-unwritable', {
      what: 'the results cannot be written',
      allowed: 'a folder that exists or can be made, and can be written to',
      got: error instanceof Error ? error.message : String(error),
      place: { field: 'out', file: given },
    });
  }
  const names = files.map(({ name }) => name);
  const leftovers = readdirSync(folder).filter(
    (name) => /^size-.*\.svg$/.test(name) && !names.includes(name),
  );
  return { folder: given, names, leftovers };
}

/** Characters that are gathered before they are written. */
const GATHERED = 1 << 16;

function writeParts(path: string, parts: Iterable<string>): void {
  const file = openSync(path, 'w');
  try {
    let text = '';
    for (const part of parts) {
      text += part;
      if (text.length < GATHERED) continue;
      writeFileSync(file, text);
      text = '';
    }
    writeFileSync(file, text);
  } finally {
    closeSync(file);
  }
}

/** The topmost folder of the path that is not there yet, or undefined if all are. */
function firstMissing(folder: string): string | undefined {
  if (existsSync(folder)) return undefined;
  const parent = dirname(folder);
  return parent === folder ? folder : (firstMissing(parent) ?? folder);
}

/** A folder under the name of a result would stop the renaming halfway. */
function refuseFolder(path: string): void {
  if (statSync(path, { throwIfNoEntry: false })?.isDirectory())
    throw new Error(`${path} is a folder`);
}

/** Cleans up as far as it can: the reason for it is about to be told, and must not be hidden. */
function discard(paths: readonly string[]): void {
  for (const path of paths) {
    try {
      rmSync(path, { force: true, recursive: true });
    } catch {
      continue;
    }
  }
}
