/** Folders for results, made one inside the other. */
import { existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Makes a folder with those that it stands in, where they are not there. Throws what `fs` throws. One by one, since
 * `mkdirSync` with `recursive` never ends in a folder that takes none, such as /proc.
 */
export function makeFolder(folder: string): void {
  const parent = dirname(folder);
  if (parent !== folder && !existsSync(parent)) makeFolder(parent);
  try {
    mkdirSync(folder);
  } catch (error) {
    if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() !== true) throw error;
  }
}
