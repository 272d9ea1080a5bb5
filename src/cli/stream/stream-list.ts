/** A list of any length drafted and measured: read, drafted by workers, written, and gone on with after a kill. */
import type { Hash } from 'node:crypto';
import type { FileHandle } from 'node:fs/promises';
import { open } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { readStreamedList } from '../../bodies/streamed-list';
import { InputError } from '../../errors';
import { STREAMED_FILES } from '../../files/streamed-tables';
import { decodedLines, isWide } from '../../table/table-text';
import { VERSION } from '../../render/version';
import { refusalOverInput } from '../output-refusal';
import { identityAt, unreadable } from '../read-file';
import { answered } from './worker-pool';
import type { AnsweredPart } from './worker-pool';
import { digestText, listDigest, refuseChanged } from './list-digest';
import { leaveFolder, takeFolder } from './folder-lock';
import type { ListPart } from './list-parts';
import { listParts } from './list-parts';
import type { StreamOrder } from './stream-order';
import { workOf } from './stream-order';
import { putInto } from './put-drawings';
import type { StreamRecord, StreamedNames } from './streamed-set';
import { StreamedSet, finishRenames, leftBeside, namesOf, recordIn } from './streamed-set';

/** Where a run reads and writes, and with how many workers; 0 drafts in this thread. */
export interface StreamPlaces {
  /** The list, and the folder of the results as it was given and where it is. */
  readonly list: string;
  readonly folder: string;
  readonly given: string;
  readonly workers: number | undefined;
  readonly replace: boolean;
  readonly progress: (words: string) => void;
}

/** What came of a run. */
export interface StreamResult {
  readonly drafted: number;
  readonly refused: number;
  /** Bodies with less hip than waist. */
  readonly turned: number;
  readonly files: readonly string[];
  /** What an earlier run into the folder left there and this one did not write. */
  readonly left: readonly string[];
  /** Rows that an earlier run, which was stopped, had done. */
  readonly goneOnFrom: number | undefined;
  /** Bodies a second in this run. */
  readonly rate: number;
}

/** Bytes at the beginning of a list in which its header stands. */
const HEAD = 1 << 16;
/** ms between two records, and between two words of progress. */
const [RECORDED, TOLD] = [200, 500];

/**
 * The beginning of a list as far as its header, and where its bodies begin. Throws InputError as
 * `readStreamedList` does, and `file-unreadable`.
 */
export async function headOf(
  path: string,
  given: string,
): Promise<Pick<StreamOrder, 'head' | 'begin'>> {
  const file = await openList(path, given);
  try {
    const { bytesRead, buffer } = await file.read(new Uint8Array(HEAD), 0, HEAD, 0);
    const bytes = buffer.subarray(0, bytesRead);
    refuseWide(bytes, given);
    const { headerRow } = readStreamedList(decodedLines(bytes), given);
    let offset = 0;
    for (let row = 0; row < headerRow; row++)
      offset = bytes.indexOf(LINE_FEED, offset) + 1 || bytesRead;
    const head = decodedLines(bytes.subarray(0, offset));
    return { head, begin: { offset, row: headerRow + 1 } };
  } finally {
    await file.close();
  }
}

const LINE_FEED = 10;

/** Throws InputError `csv-malformed` for a list in UTF-16, whose lines end in two bytes. */
function refuseWide(bytes: Uint8Array, given: string): void {
  if (!isWide(bytes)) return;
  throw new InputError('csv-malformed', {
    what: 'the list is saved as UTF-16 ("Unicode text"), which is not read part by part',
    allowed: 'the list saved as CSV in UTF-8',
    place: { file: given },
  });
}

async function openList(path: string, given: string): Promise<FileHandle> {
  const file = await open(path).catch((error: unknown) => {
    throw unreadable(given, error instanceof Error ? error.message : String(error));
  });
  if ((await file.stat()).isFile()) return file;
  await file.close();
  throw unreadable(given, 'no file');
}

/** Throws InputError for an order or a folder that cannot be used. */
export async function streamList(order: StreamOrder, places: StreamPlaces): Promise<StreamResult> {
  const files: StreamedNames = {
    tables: STREAMED_FILES.filter((name) => order.points || name !== 'points.csv'),
    drawings: order.drawings.length > 0,
  };
  const file = await openList(places.list, order.file);
  try {
    refuseInput(places, order.file, namesOf(files));
    const work = workOf(order);
    await takeFolder(places.folder, places.given);
    try {
      return await streamInto(files, file, work, order, places);
    } finally {
      leaveFolder(places.folder);
    }
  } finally {
    await file.close();
  }
}

/** The same with a folder that no other run writes into. */
async function streamInto(
  files: StreamedNames,
  file: FileHandle,
  work: ReturnType<typeof workOf>,
  order: StreamOrder,
  places: StreamPlaces,
): Promise<StreamResult> {
  const { size, mtimeMs } = await file.stat();
  const facts = JSON.stringify([VERSION, order, size, mtimeMs]);
  const { offset: begin } = order.begin;
  const digestTo = (end: number): Promise<Hash> => listDigest(facts, file, begin, end);
  const read = await digestTo(recordIn(places.folder)?.offset ?? begin);
  const digest = digestText(read);
  const done = finishRenames(places.folder, files, digest);
  const told = { files: namesOf(files), left: leftBeside(places.folder, files) };
  if (done !== undefined) return { ...done, ...told, goneOnFrom: done.row, rate: 0 };
  const { folder, given, replace } = places;
  const { set, record } = StreamedSet.open(folder, given, files, digest, replace);
  try {
    const from = record === undefined ? await digestTo(begin) : read;
    const ran = await run(order, places, { set, record, digest: from, size, file, work });
    const now = await file.stat();
    const isTouched = now.mtimeMs !== mtimeMs;
    // What a longer list had at its end meanwhile may have been half of a row.
    if (now.size !== size || (isTouched && digestText(await digestTo(size)) !== digestText(from)))
      refuseChanged(order.file);
    set.finish();
    return { ...ran, ...told };
  } catch (error) {
    // What is wrong with the list as a whole will be so in every run.
    if (error instanceof InputError) set.discard();
    else set.close();
    throw error;
  }
}

/** Throws InputError `output-is-input` where a result would take the place of the list. */
function refuseInput(
  { list, folder }: StreamPlaces,
  given: string,
  names: readonly string[],
): void {
  const same = names.find((name) => identityAt(join(folder, name)) === identityAt(list));
  if (same !== undefined) throw refusalOverInput(given, same);
}

interface Opened {
  readonly set: StreamedSet;
  readonly record: StreamRecord | undefined;
  /** Of what was read so far. */
  readonly digest: Hash;
  readonly size: number;
  readonly file: FileHandle;
  readonly work: ReturnType<typeof workOf>;
}

/** Bytes of a part: some hundred bodies, and some ten where each is drawn too, so that a killed run loses little. */
const [PART, DRAWN_PART] = [1 << 14, 1 << 9];

/** Bytes of a list that is drafted sooner than workers have begun. No tolerance. */
const SHORT = 1 << 14;

/** One worker a processor; none for a short list. */
function usualWorkers(size: number): number {
  return size < SHORT ? 0 : availableParallelism();
}

async function run(
  order: StreamOrder,
  { workers: asked, progress }: StreamPlaces,
  { set, record, digest, size, file, work }: Opened,
): Promise<Omit<StreamResult, 'files' | 'left'>> {
  const workers = asked ?? usualWorkers(size);
  let at = record ?? firstRecord(order, digestText(digest));
  if (record === undefined) set.append(work.headers);
  const start = { at: at.offset, time: performance.now(), drafted: at.drafted + at.refused };
  // The first part at once, so that a run that is soon killed is gone on with too.
  let [recorded, told] = [-Infinity, start.time];
  const parts = listParts(file, order.file, at, order.drawings.length > 0 ? DRAWN_PART : PART);
  const answers =
    workers === 0
      ? inThisThread(parts, work, putInto(set.drawings))
      : answered(parts, { order, drawings: set.drawings }, workers);
  for await (const { part, answer } of answers) {
    set.append(answer.texts);
    at = {
      digest: digestText(digest.update(part.bytes)),
      ...{ offset: part.end, row: part.nextRow, lengths: [], isDone: false },
      drafted: at.drafted + answer.drafted,
      refused: at.refused + answer.refused,
      turned: at.turned + answer.turned,
    };
    const now = performance.now();
    if (now - recorded > RECORDED) {
      set.record(at);
      recorded = now;
    }
    if (now - told > TOLD) {
      progress(progressWords(at, start, size, now));
      told = now;
    }
  }
  set.record({ ...at, isDone: true });
  const seconds = (performance.now() - start.time) / 1000;
  return {
    ...{ drafted: at.drafted, refused: at.refused, turned: at.turned },
    goneOnFrom: record?.row,
    rate: (at.drafted + at.refused - start.drafted) / seconds,
  };
}

function firstRecord({ begin }: StreamOrder, digest: string): StreamRecord {
  return { digest, ...begin, drafted: 0, refused: 0, turned: 0, lengths: [], isDone: false };
}

async function* inThisThread(
  parts: AsyncGenerator<ListPart>,
  work: ReturnType<typeof workOf>,
  put: ReturnType<typeof putInto>,
): AsyncGenerator<AnsweredPart> {
  for await (const part of parts) {
    const done = work.part(decodedLines(part.bytes), part.row, put);
    yield { part, answer: { index: part.index, ...done } };
  }
}

function progressWords(
  at: StreamRecord,
  start: { readonly at: number; readonly time: number; readonly drafted: number },
  size: number,
  now: number,
): string {
  const seconds = (now - start.time) / 1000;
  const bodies = at.drafted + at.refused;
  const rate = (bodies - start.drafted) / seconds;
  const left = ((size - at.offset) / Math.max(1, at.offset - start.at)) * seconds;
  return `${bodies} bodies, ${Math.round(rate)} a second, ${timeWords(left)} left`;
}

function timeWords(seconds: number): string {
  if (seconds < 90) return `${Math.round(seconds)} s`;
  return seconds < 5400 ? `${Math.round(seconds / 60)} min` : `${Math.round(seconds / 3600)} h`;
}
