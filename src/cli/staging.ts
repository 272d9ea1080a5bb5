/**
 * The folder in which a set is made before it takes its place, and the two ways to put it there.
 *
 * Beside the target: the old folder is moved into the staging folder and the new one out of it, in two
 * renames. Within the target, where that cannot be (it is the folder one stands in, or has folders of
 * its own, or another disk, or what stays in it cannot be linked, or a window of Windows shows it): file by
 * file, with a journal by which all of it is undone.
 */
import {
  chmodSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, isAbsolute, join, relative, sep } from 'node:path';
import { makeFolder } from './make-folder';
import { LIST_NAME, readList } from './written-list';

/** A staging folder; the new set is made in `made`. */
export interface Staging {
  readonly target: string;
  readonly folder: string;
  readonly made: string;
  readonly isBeside: boolean;
}

/** What becomes of the files of a target: each name once. */
export interface FileChanges {
  /** Files of the new set. */
  readonly made: readonly string[];
  /** Files of the earlier set that go with it. */
  readonly dropped: readonly string[];
  /** All others, which stay. */
  readonly kept: readonly string[];
}

const MARK = '.skirtgrade-staging-';

/** Makes the staging folder of a target, whose own folder need not exist. Throws what `fs` throws. */
export function openStaging(target: string): Staging {
  const isBeside = canMoveAway(target);
  const prefix = isBeside ? besidePrefix(target) : join(target, MARK);
  const folder = `${prefix}${process.pid}`;
  makeFolder(join(folder, 'new'));
  return { target, folder, made: join(folder, 'new'), isBeside };
}

/** Puts the set in its place; on an error the target is as it was. Throws what `fs` throws. */
export function place(staging: Staging, placement: FileChanges): void {
  const isSwapped = staging.isBeside && keepsLinked(staging, placement) && swap(staging);
  if (!isSwapped) placeWithin(staging, placement);
}

/**
 * Links what stays into the new set, so that it is in both folders whenever the program is killed; false where
 * it cannot be linked, as on many memory cards and network drives.
 */
function keepsLinked({ target, made }: Staging, { kept }: FileChanges): boolean {
  try {
    for (const name of kept) linkSync(join(target, name), join(made, name));
    return true;
  } catch {
    return false;
  }
}

/** Takes the staging folder away, and puts back what a placement that failed has moved. */
export function closeStaging({ target, folder }: Pick<Staging, 'target' | 'folder'>): void {
  undoWithin(target, folder);
  putBack(target, folder);
  rmSync(folder, { recursive: true, force: true });
}

/** Clears what runs left that were killed: their staging folders, and a target half replaced. */
export function clearEarlier(target: string): void {
  for (const prefix of [besidePrefix(target), join(target, MARK)])
    for (const folder of foldersWith(prefix))
      if (isAbandoned(folder, prefix)) closeStaging({ target, folder });
}

function besidePrefix(target: string): string {
  return join(dirname(target), `.${basename(target)}${MARK}`);
}

function foldersWith(prefix: string): readonly string[] {
  const parent = dirname(prefix);
  if (!existsSync(parent)) return [];
  return readdirSync(parent)
    .map((name) => join(parent, name))
    .filter((path) => path.startsWith(prefix) && /^\d+$/u.test(path.slice(prefix.length)));
}

/** A run whose process is gone; one of this very number if it was made before this process began. */
function isAbandoned(folder: string, prefix: string): boolean {
  const pid = Number(folder.slice(prefix.length));
  if (pid === process.pid) {
    const stat = statSync(folder, { throwIfNoEntry: false });
    return stat !== undefined && stat.mtimeMs < performance.timeOrigin;
  }
  try {
    process.kill(pid, 0);
    return false;
  } catch (error) {
    return codeOf(error) === 'ESRCH';
  }
}

/** Whether the folder can be replaced as a whole: it holds plain files, and nobody stands in it. */
function canMoveAway(target: string): boolean {
  if (dirname(target) === target || isWithin(process.cwd(), target)) return false;
  const stat = statSync(target, { throwIfNoEntry: false });
  if (stat === undefined) return true;
  if (stat.dev !== statSync(dirname(target)).dev) return false;
  if (!readdirSync(target).every((name) => lstatSync(join(target, name)).isFile())) return false;
  // Whether the parent takes folders is seen by making one.
  const trial = `${besidePrefix(target)}${process.pid}`;
  try {
    mkdirSync(trial);
    return true;
  } catch {
    return false;
  }
}

/** Whether a path is a folder or leads into it, whatever the case of letters is worth to the system. */
function isWithin(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/** How often another run may come between the two renames. */
const TRIES = 100;

/** False, and nothing is done, where the system does not let go of the old folder. */
function swap({ target, folder, made }: Staging): boolean {
  const stat = statSync(target, { throwIfNoEntry: false });
  if (stat !== undefined) chmodSync(made, stat.mode & 0o7777);
  makeFolder(dirname(target));
  for (let i = 0; ; i++) {
    const old = join(folder, `old-${i}`);
    try {
      if (existsSync(target)) renameIfThere(target, old);
    } catch (error) {
      if (i === 0 && HELD.has(codeOf(error))) return false;
      throw error;
    }
    try {
      renameSync(made, target);
      return true;
    } catch (error) {
      const code = codeOf(error);
      const isTaken = code === 'ENOTEMPTY' || code === 'EEXIST' || code === 'EPERM';
      if (!isTaken || i >= TRIES) throw error;
    }
  }
}

/** What the system says of a folder in which somebody stands, or of which a file is open. */
const HELD: ReadonlySet<string | undefined> = new Set(['EBUSY', 'EPERM', 'EACCES']);

function codeOf(error: unknown): string | undefined {
  return (error as NodeJS.ErrnoException).code;
}

function renameIfThere(from: string, to: string): void {
  try {
    renameSync(from, to);
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') throw error;
  }
}

/** Gives the target back where it was moved away and not replaced; else what came into it meanwhile. */
function putBack(target: string, folder: string): void {
  const olds = foldersWithin(folder, /^old-\d+$/u);
  for (const old of olds.toReversed()) {
    if (!existsSync(target)) {
      renameIfThere(old, target);
      continue;
    }
    const own = readList(old);
    for (const name of readdirSync(old)) {
      if (own.has(name) || name === LIST_NAME || existsSync(join(target, name))) continue;
      renameSync(join(old, name), join(target, name));
    }
    // Spent before anything of it goes: without its list, the rest of it would look like the user's own.
    renameSync(old, join(folder, `spent-${basename(old)}`));
  }
}

function foldersWithin(folder: string, form: RegExp): readonly string[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => form.test(name))
    .map((name) => join(folder, name));
}

interface Step {
  readonly name: string;
  readonly hadOld: boolean;
  readonly hasNew: boolean;
}

const JOURNAL = 'journal.json';

function placeWithin(
  { target, folder, made }: Staging,
  { made: names, dropped }: FileChanges,
): void {
  const steps = [...names, ...dropped].map((name, i): Step => ({
    name,
    hadOld: existsSync(join(target, name)),
    hasNew: i < names.length,
  }));
  mkdirSync(join(folder, 'old'));
  // Under its name only when it is whole.
  writeFileSync(join(folder, `${JOURNAL}.part`), JSON.stringify(steps));
  renameSync(join(folder, `${JOURNAL}.part`), join(folder, JOURNAL));
  for (const { name, hadOld, hasNew } of steps) {
    if (hadOld) renameIfThere(join(target, name), join(folder, 'old', name));
    if (hasNew) renameSync(join(made, name), join(target, name));
  }
  // From here on it is done.
  rmSync(join(folder, JOURNAL));
}

/** Undoes what a placement file by file has begun. */
function undoWithin(target: string, folder: string): void {
  const journal = join(folder, JOURNAL);
  if (!existsSync(journal)) return;
  for (const { name, hadOld, hasNew } of JSON.parse(readFileSync(journal, 'utf8')) as Step[]) {
    const isMoved = hasNew && !existsSync(join(folder, 'new', name));
    if (hadOld) renameIfThere(join(folder, 'old', name), join(target, name));
    else if (isMoved) rmSync(join(target, name), { force: true });
  }
  // Spent before anything else goes, or it would be undone once more from what is left.
  rmSync(journal);
}
