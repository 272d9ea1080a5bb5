/**
 * The files of a streamed run while it writes them, and the record of how far it has come: after a kill the
 * same call cuts each file back to its length in the record and goes on from there, so that nothing is lost
 * and nothing stands twice.
 */
import {
  closeSync,
  existsSync,
  fdatasyncSync,
  ftruncateSync,
  lstatSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { DRAWINGS } from '../../files/streamed-drawings';
import { STREAMED_FILES } from '../../files/streamed-tables';
import { outputRefusal } from '../output-refusal';
import { strangerIn } from './put-drawings';

/** How far a run has come. */
export interface StreamRecord {
  /** What the bytes hang on: the list as far as it was read, order and version. */
  readonly digest: string;
  /** Where in the list the next part begins, in bytes, and its row. */
  readonly offset: number;
  readonly row: number;
  readonly drafted: number;
  readonly refused: number;
  /** Bodies with less hip than waist. */
  readonly turned: number;
  /** The length of each file in bytes. */
  readonly lengths: readonly number[];
  /** True once all is written, and the files only have to take their names. */
  readonly isDone: boolean;
}

/** The record beside the files of a run that is not done. */
const RECORD = 'draft-progress.json';
const UNDONE = '.part';

/** What a run writes into its folder. */
export interface StreamedNames {
  readonly tables: readonly string[];
  /** Whether there is a folder of drawings too. */
  readonly drawings: boolean;
}

/** The names that the results have in their folder. */
export function namesOf({ tables, drawings }: StreamedNames): readonly string[] {
  return drawings ? [...tables, DRAWINGS] : tables;
}

/** What stands beside the results of a run under the name of another's. */
export function leftBeside(folder: string, names: StreamedNames): readonly string[] {
  return [...STREAMED_FILES, DRAWINGS].filter(
    (name) => !namesOf(names).includes(name) && existsSync(join(folder, name)),
  );
}

/** The files of a run that is not done. */
export class StreamedSet {
  /** Where its drawings go meanwhile. */
  readonly drawings: string;
  private readonly descriptors: readonly number[];
  private readonly lengths: number[];

  private constructor(
    private readonly folder: string,
    private readonly names: StreamedNames,
    lengths: readonly number[],
  ) {
    this.drawings = join(folder, DRAWINGS + UNDONE);
    if (names.drawings) mkdirSync(this.drawings, { recursive: true });
    this.lengths = [...lengths];
    this.descriptors = names.tables.map((name, i) => {
      const path = join(folder, name + UNDONE);
      const descriptor = openSync(path, existsSync(path) ? 'r+' : 'w+');
      // What was written after the record is written again.
      ftruncateSync(descriptor, this.lengths[i]);
      return descriptor;
    });
  }

  /**
   * Opens the set of a folder: anew, or where a run of the same `digest` was stopped. Throws InputError
   * `output-changed` where the folder has something else and `replace` is not asked for, and where its
   * folder of drawings has what no such run put there.
   */
  static open(
    folder: string,
    given: string,
    names: StreamedNames,
    digest: string,
    replace: boolean,
  ): { readonly set: StreamedSet; readonly record: StreamRecord | undefined } {
    const earlier = recordIn(folder);
    const record = earlier?.digest === digest ? earlier : undefined;
    const taken = namesOf(names).find((name) => existsSync(join(folder, name)));
    const isTaken = taken !== undefined && record?.isDone !== true;
    if (!replace && (isTaken || (earlier !== undefined && record === undefined)))
      throw outputRefusal(given, 'output-changed', {
        what: isTaken
          ? 'a result would replace a file that is there'
          : 'the folder has the beginning of a run of another list or call, which was stopped',
        orField: 'replace',
        got: taken ?? RECORD,
      });
    const odd = names.tables.find((name) => isNoFile(join(folder, name)));
    if (odd !== undefined)
      throw outputRefusal(given, 'output-changed', {
        what: 'a result would replace what is no file',
        allowed: 'another folder for the results, or what stands there elsewhere',
        got: odd,
      });
    const link = namesOf(names)
      .map((name) => name + UNDONE)
      .find((name) => isLink(join(folder, name)));
    if (link !== undefined)
      throw outputRefusal(given, 'output-changed', {
        what: 'a link stands where a result is made',
        allowed: 'another folder for the results, or the link elsewhere',
        got: link,
      });
    const stranger = names.drawings ? strangerIn(join(folder, DRAWINGS)) : undefined;
    if (stranger !== undefined)
      throw outputRefusal(given, 'output-changed', {
        what: 'the folder of drawings has a file that no streamed run put there',
        allowed: 'another folder for the results, or that file elsewhere',
        got: join(DRAWINGS, stranger),
      });
    if (record === undefined) {
      rmSync(join(folder, RECORD), { force: true });
      rmSync(join(folder, DRAWINGS + UNDONE), { recursive: true, force: true });
    }
    const set = new StreamedSet(folder, names, record?.lengths ?? names.tables.map(() => 0));
    return { set, record };
  }

  /** Adds a text to each file. */
  append(texts: readonly string[]): void {
    for (const [i, text] of texts.entries()) {
      const descriptor = this.descriptors[i];
      if (descriptor === undefined || text === '') continue;
      const bytes = Buffer.from(text);
      // At its end as it is known: a file that is gone on with is opened at its beginning.
      const end = this.lengths[i] ?? 0;
      for (let at = 0; at < bytes.length;)
        at += writeSync(descriptor, bytes, at, bytes.length - at, end + at);
      this.lengths[i] = end + bytes.length;
    }
  }

  /** Records how far the run has come, once all that it says is on the disk. */
  record(state: Omit<StreamRecord, 'lengths'>): void {
    for (const descriptor of this.descriptors) fdatasyncSync(descriptor);
    const path = join(this.folder, RECORD);
    writeFileSync(`${path}${UNDONE}`, JSON.stringify({ ...state, lengths: this.lengths }));
    renameSync(`${path}${UNDONE}`, path);
  }

  /** Gives the files their names; the record goes last. */
  finish(): void {
    this.close();
    renameAll(this.folder, this.names);
  }

  /** Takes away all that the run has written. */
  discard(): void {
    this.close();
    for (const name of [...namesOf(this.names).map((own) => own + UNDONE), RECORD])
      rmSync(join(this.folder, name), { recursive: true, force: true });
  }

  /** Leaves all as it is. */
  close(): void {
    for (const descriptor of this.descriptors) closeSync(descriptor);
  }
}

/** Finishes what a run left that was killed while its files took their names. True where there was one. */
export function finishRenames(
  folder: string,
  names: StreamedNames,
  digest: string,
): StreamRecord | undefined {
  const record = recordIn(folder);
  if (record?.digest !== digest || !record.isDone) return undefined;
  renameAll(folder, names);
  return record;
}

/** Gives what has not got it yet its name; the record goes last. */
function renameAll(folder: string, names: StreamedNames): void {
  for (const name of namesOf(names)) {
    const [undone, done] = [join(folder, name + UNDONE), join(folder, name)];
    if (!existsSync(undone)) continue;
    // A folder takes no place where there is one; of tables nothing but a file is replaced.
    rmSync(done, { recursive: name === DRAWINGS, force: true });
    renameSync(undone, done);
  }
  rmSync(join(folder, RECORD));
}

function isNoFile(path: string): boolean {
  const stat = lstatSync(path, { throwIfNoEntry: false });
  return stat !== undefined && !stat.isFile() && !stat.isSymbolicLink();
}

function isLink(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true;
}

/** The record of a folder; one that is no record is that of no run. */
export function recordIn(folder: string): StreamRecord | undefined {
  const path = join(folder, RECORD);
  if (!existsSync(path)) return undefined;
  const none: StreamRecord = {
    ...{ digest: '', offset: 0, row: 0, drafted: 0, refused: 0, turned: 0 },
    ...{ lengths: [], isDone: false },
  };
  try {
    const found: unknown = JSON.parse(readFileSync(path, 'utf8'));
    return { ...none, ...(found as Partial<StreamRecord> | null) };
  } catch (error) {
    if (error instanceof SyntaxError) return none;
    throw error;
  }
}
