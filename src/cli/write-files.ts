/** Writes a set of files so that all of them appear, or none. */
import { createHash } from 'node:crypto';
import type { Stats } from 'node:fs';
import {
  closeSync,
  existsSync,
  lstatSync,
  openSync,
  readFileSync,
  readdirSync,
  realpathSync,
  rmdirSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { InputError } from '../errors';
import type { BinaryFile, ResultFile } from '../files/result-file';
import { outputRefusal, refusalOverInput } from './output-refusal';
import { identityAt } from './read-file';
import type { FileChanges } from './staging';
import { clearEarlier, closeStaging, openStaging, place } from './staging';
import { Stopped, stoppable } from './stopped';
import type { ListedFile } from './written-list';
import { LIST_NAME, digestOf, listText, readList } from './written-list';

/** What a run left on the disk. */
export interface WrittenFiles {
  readonly folder: string;
  /** In the order in which they were given. */
  readonly names: readonly string[];
  /** Files of an earlier run that were changed since, and drawings that no list knows: they stay. */
  readonly leftovers: readonly string[];
  /** Files of an earlier run that this run did not write, and that went with it. */
  readonly dropped: readonly string[];
  /** Files of other sets that show another skirt than this one: other settings, or another chart. */
  readonly outdated: readonly string[];
}

/** How a set is written. */
export interface WriteOrder {
  /** The files that come and go together, such as those of `grade`. */
  readonly set: string;
  /** What of the skirt is cut, if the files show any of it. */
  readonly shows?: string | undefined;
  /** Whether files may be replaced that this program did not write, or that were changed since. */
  readonly replace?: boolean | undefined;
}

/**
 * Makes the files in a staging folder and puts them in their place when all are on disk, with a list
 * of their digests; what earlier runs left half done is cleared. The folder is told as it was `given`;
 * `inputs` are the identities of the files that were read. Throws InputError `file-unwritable`,
 * `output-is-input` or `output-changed`, and Stopped; the folder is as it was then.
 */
export async function writeFiles(
  given: string,
  folder: string,
  files: readonly (ResultFile | BinaryFile)[],
  order: WriteOrder,
  inputs: ReadonlySet<string>,
): Promise<WrittenFiles> {
  const target = existsSync(folder) ? realpathSync(folder) : resolve(folder);
  const created = firstMissing(dirname(target));
  let isPlaced = false;
  try {
    return await stoppable(async (pause) => {
      const names = files.map(({ name }) => name);
      const there = statSync(target, { throwIfNoEntry: false });
      if (there?.isDirectory() === false)
        throw outputRefusal(given, 'file-unwritable', {
          what: 'the results go into a folder',
          allowed: 'a folder that exists or can be made',
          got: there.isFile() ? 'a file' : kindOf(there),
        });
      clearEarlier(target);
      for (const name of names) refuseInput(given, target, name, inputs);
      const staging = openStaging(target);
      try {
        const digests = new Map<string, string>();
        for (const file of files) {
          digests.set(file.name, writeFile(join(staging.made, file.name), file));
          await pause();
        }
        const { list, leftovers, outdated, ...placement } = plan(
          given,
          target,
          digests,
          order,
          inputs,
        );
        writeFileSync(join(staging.made, LIST_NAME), listText(list));
        await pause();
        place(staging, placement);
        isPlaced = true;
        return { folder: given, names, leftovers, outdated, dropped: placement.dropped };
      } finally {
        closeStaging(staging);
      }
    });
  } catch (error) {
    if (!isPlaced && created !== undefined) removeEmpty(dirname(target), created);
    if (error instanceof InputError || error instanceof Stopped) throw error;
    throw unwritable(given, error);
  }
}

/** Characters that are gathered before they are written. */
const GATHERED = 1 << 16;

/** Gives the digest of what it wrote. */
function writeFile(path: string, file: ResultFile | BinaryFile): string {
  if (!('parts' in file) || file.parts === undefined) {
    const content = 'bytes' in file ? file.bytes : file.text;
    writeFileSync(path, content);
    return digestOf(content);
  }
  const hash = createHash('sha256');
  const descriptor = openSync(path, 'w');
  try {
    let text = '';
    const flush = (): void => {
      hash.update(text);
      writeFileSync(descriptor, text);
      text = '';
    };
    for (const part of file.parts()) {
      text += part;
      if (text.length >= GATHERED) flush();
    }
    flush();
  } finally {
    closeSync(descriptor);
  }
  return hash.digest('hex');
}

interface Plan extends FileChanges {
  readonly list: ReadonlyMap<string, ListedFile>;
  readonly leftovers: readonly string[];
  readonly outdated: readonly string[];
}

/** What becomes of the files of the target. Throws InputError `output-changed`. */
function plan(
  given: string,
  target: string,
  digests: ReadonlyMap<string, string>,
  { set, shows: shown, replace = false }: WriteOrder,
  inputs: ReadonlySet<string>,
): Plan {
  const listed = readList(target);
  const present = existsSync(target)
    ? readdirSync(target).filter((name) => lstatSync(join(target, name)).isDirectory() === false)
    : [];
  const isAsWritten = (name: string): boolean => {
    const path = join(target, name);
    if (!lstatSync(path).isFile()) return false;
    const digest = digestOf(readFileSync(path));
    return digest === listed.get(name)?.digest || digest === digests.get(name);
  };
  const others = present.filter((name) => !digests.has(name) && name !== LIST_NAME);
  for (const name of digests.keys()) {
    if (replace || !present.includes(name)) continue;
    const refused = (what: string): InputError =>
      outputRefusal(given, 'output-changed', { what, orField: 'replace', got: name });
    if (!isAsWritten(name))
      throw refused(
        'a result would replace a file that this program did not write, or that was changed since',
      );
    const there = listed.get(name);
    // A print of `grade` and one of `print` are the same thing; tables of bodies and of sizes are not.
    const isOther = there !== undefined && there.set !== set;
    if (isOther && (there.shows === undefined) !== (shown === undefined))
      throw refused(
        `a result would replace a file of another kind, which ${there.set} wrote under the same name`,
      );
  }
  const ofSet = others.filter((name) => listed.get(name)?.set === set);
  const dropped = ofSet.filter(
    (name) => isAsWritten(name) && !inputs.has(identityAt(join(target, name)) ?? ''),
  );
  const list = new Map(
    [...listed].filter(([name, file]) => file.set !== set && others.includes(name)),
  );
  const shows = shown === undefined ? undefined : digestOf(shown);
  for (const [name, digest] of digests) list.set(name, { digest, set, shows });
  const kept = others.filter((name) => !dropped.includes(name));
  const leftovers = kept.filter(
    (name) => ofSet.includes(name) || (/^size-.*\.svg$/u.test(name) && !listed.has(name)),
  );
  const outdated = kept.filter((name) => {
    const file = listed.get(name);
    return ![set, undefined].includes(file?.set) && ![shows, undefined].includes(file?.shows);
  });
  return { made: [...digests.keys(), LIST_NAME], dropped, kept, list, leftovers, outdated };
}

/** A folder, a device or a pipe under the name of a result is not for it to replace. */
function refuseInput(
  given: string,
  target: string,
  name: string,
  inputs: ReadonlySet<string>,
): void {
  const path = join(target, name);
  const stat = statSync(path, { throwIfNoEntry: false });
  if (stat?.isFile() === false)
    throw outputRefusal(given, 'file-unwritable', {
      what: 'a result would replace what is no file',
      got: `${path}, which is ${kindOf(stat)}`,
    });
  if (inputs.has(identityAt(path) ?? '')) throw refusalOverInput(given, name);
}

/** What is told of a fault of the disk or of a folder. */
export function unwritable(given: string, error: unknown): InputError {
  return outputRefusal(given, 'file-unwritable', {
    what: 'the results cannot be written',
    allowed:
      'a folder that exists or can be made, that can be written to, and of which no file is open in ' +
      'another program',
    got: error instanceof Error ? error.message : String(error),
  });
}

function kindOf(stat: Stats): string {
  if (stat.isDirectory()) return 'a folder';
  return stat.isFIFO() || stat.isSocket() ? 'a pipe or socket' : 'a device';
}

/** The topmost folder of the path that is not there yet, or undefined if all are. */
function firstMissing(folder: string): string | undefined {
  if (existsSync(folder)) return undefined;
  const parent = dirname(folder);
  return parent === folder ? folder : (firstMissing(parent) ?? folder);
}

/** Removes the folders from one up to one above it, as far as nothing is in them. */
function removeEmpty(lowest: string, topmost: string): void {
  for (let folder = lowest; folder.startsWith(topmost); folder = dirname(folder)) {
    try {
      rmdirSync(folder);
    } catch (error) {
      // What was not made yet need not go; what another run has filled stays.
      if ((error as NodeJS.ErrnoException).code !== 'ENOENT') return;
    }
  }
}
