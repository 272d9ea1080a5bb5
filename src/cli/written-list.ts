/** The list of what was written into a folder, by which a file that somebody changed is known. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Its name in the folder. */
export const LIST_NAME = '.skirtgrade-written';

const HEAD =
  '# What skirtgrade wrote here, as SHA-256. A file that has another by now is not replaced.';

/** A file that was written, and the set of files that it came and goes with. */
export interface ListedFile {
  readonly digest: string;
  readonly set: string;
  /** Digest of what the set shows, where it is known. */
  readonly shows?: string | undefined;
}

/** SHA-256 (FIPS 180-4) in hexadecimal digits. */
export function digestOf(bytes: Uint8Array | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}

/** The list of a folder by the names of its files; empty where there is none that can be read. */
export function readList(folder: string): ReadonlyMap<string, ListedFile> {
  let text = '';
  try {
    text = readFileSync(join(folder, LIST_NAME), 'utf8');
  } catch {
    // Without a list nothing is known to be our own, which is the careful reading.
  }
  const files = new Map<string, ListedFile>();
  let set = '';
  let shows: string | undefined;
  for (const line of text.split('\n')) {
    const [, heading, of] = /^# set (.+?)(?: shows ([0-9a-f]{64}))?$/u.exec(line) ?? [];
    if (heading !== undefined) [set, shows] = [heading, of];
    const [, digest, name] = /^([0-9a-f]{64}) {2}(.+)$/u.exec(line) ?? [];
    if (digest !== undefined && name !== undefined) files.set(name, { digest, set, shows });
  }
  return files;
}

/**
 * The texts of files of a set that an earlier run left in a folder. One that was changed since or cannot
 * be read is left out: it does not say what that run made.
 */
export function earlierTexts(
  folder: string,
  set: string,
  names: readonly string[],
): ReadonlyMap<string, string> {
  const listed = readList(folder);
  const texts = new Map<string, string>();
  for (const name of names) {
    const file = listed.get(name);
    const text = file?.set === set ? textAt(join(folder, name)) : undefined;
    if (text !== undefined && digestOf(text) === file?.digest) texts.set(name, text);
  }
  return texts;
}

function textAt(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}

/** The list as text, which `sha256sum -c` reads as well. */
export function listText(files: ReadonlyMap<string, ListedFile>): string {
  const shown = new Map([...files.values()].map(({ set, shows }) => [set, shows]));
  const lines = [...shown].sort().flatMap(([set, shows]) => [
    `# set ${set}${shows === undefined ? '' : ` shows ${shows}`}`,
    ...[...files]
      .filter(([, file]) => file.set === set)
      .map(([name, { digest }]) => `${digest}  ${name}`)
      .sort(),
  ]);
  return [HEAD, ...lines, ''].join('\n');
}
