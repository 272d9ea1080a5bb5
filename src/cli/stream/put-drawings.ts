/** Where the threads of a streamed run put the drawings that they make. */
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { DRAWING_PATH } from '../../files/streamed-drawings';
import type { ResultFile } from '../../files/result-file';

/** Writes drawings below `folder`, whose folders it makes as they are needed. */
export function putInto(folder: string): (drawing: ResultFile) => void {
  let last = '';
  return ({ name, text }) => {
    const path = join(folder, name);
    const parent = dirname(path);
    if (parent !== last) mkdirSync(parent, { recursive: true });
    last = parent;
    writeFileSync(path, text);
  };
}

/** What a folder of drawings holds that no streamed run put there, by its path in it; undefined for nothing. */
export function strangerIn(folder: string): string | undefined {
  if (!existsSync(folder)) return undefined;
  for (const { name, isFolder } of entriesOf(folder)) {
    if (!isFolder) return name;
    const inside = entriesOf(join(folder, name));
    const stranger = inside.find(
      (file) => file.isFolder || !DRAWING_PATH.test(join(name, file.name)),
    );
    if (stranger !== undefined) return join(name, stranger.name);
  }
  return undefined;
}

function entriesOf(
  folder: string,
): readonly { readonly name: string; readonly isFolder: boolean }[] {
  return readdirSync(folder, { withFileTypes: true }).map((entry) => ({
    name: entry.name,
    isFolder: entry.isDirectory(),
  }));
}
