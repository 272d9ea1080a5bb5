/** `skirtgrade draft`: a skirt for each body of a list, made to its own measurements. */
import { counted } from '../table/counted';
import { displayAsTyped, hasFractions } from '../table/typed-fractions';
import type { BodyEntry, BodyList } from '../bodies/body-list';
import { distinctName, placeName, readBodyList } from '../bodies/body-list';
import type { BodyRequest, DraftedBody, RefusedBody } from '../bodies/draft-bodies';
import { draftBodies } from '../bodies/draft-bodies';
import type { TriedRange } from '../bodies/nearest-size';
import { triedRange } from '../bodies/nearest-size';
import { readChart } from '../chart/read-chart';
import { refuseBareLengths } from '../draft/bare-length';
import { DEFAULT_STYLE } from '../draft/default-style';
import { findStyle } from '../draft/styles';
import { InputError } from '../errors';
import type { BodyRecord } from '../files/body-files';
import {
  bodyDrawing,
  bodyRecord,
  bodyStem,
  bodyTables,
  namedResult,
  notReadInList,
} from '../files/body-files';
import type { BinaryFile, ResultFile } from '../files/result-file';
import type { ChartGrade } from '../jobs/grade-chart';
import type { GradeRequest } from '../jobs/requests';
import type { PrintRequest } from '../print/print-options';
import type { LengthDisplay } from '../units';
import { UNIT_WORDS } from '../units';
import { draftReport } from './draft-report';
import { outFolder } from './grade-request';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { verdictFacts, writtenFacts } from './json-facts';
import { notReadFacts } from './not-read-line';
import { optionOf } from './option-words';
import { STDIN, readNamed } from './read-named';
import type { StyleOptions } from './style-request';
import { styleRequest } from './style-request';
import { withoutUndefined } from './without-undefined';
import type { WrittenFiles } from './write-files';
import { namesReport } from './written-report';

/** The options of `draft` as commander reads them. */
export type DraftCommandOptions = Pick<
  GradeRequest,
  'allowances' | 'unit' | 'fractions' | 'lines'
> &
  StyleOptions &
  Partial<PrintRequest> &
  Telling & {
    readonly rows?: readonly string[];
    readonly anonymous?: boolean;
    readonly nearest?: string;
    readonly stream?: boolean;
    readonly points?: boolean;
    readonly drawings?: readonly string[];
    readonly workers?: string;
    readonly out?: string;
    readonly replace?: boolean;
  };

/** What was made of a list. */
export interface DraftedList {
  readonly list: BodyList;
  readonly style: string;
  readonly records: readonly BodyRecord[];
  readonly refused: readonly RefusedBody[];
  /** Bodies that were printed under their place, since the font lacks letters of their names. */
  readonly unprintable: readonly BodyEntry[];
  readonly written: WrittenFiles;
  /** The chart whose sizes were tried on. */
  readonly tried: string | undefined;
  readonly display: LengthDisplay;
}

/**
 * Drafts every body, writes the files and tells the verdicts. Gives 0, or 1 where a check failed or a
 * body was set aside; throws InputError, and then nothing is written.
 */
export async function draftCommand(
  path: string,
  options: DraftCommandOptions,
  io: Io,
): Promise<ExitCode> {
  if (options.stream === true) {
    const { streamCommand } = await import('./stream-command');
    return streamCommand(path, options, io);
  }
  refuseStreamed(options);
  const list = readList(io, path);
  const entries = wantedEntries(list, options.rows);
  const { style, set, project, allowances, unit, fractions, lines } = options;
  const styled = styleRequest({ style, set, project }, io);
  const asked = withoutUndefined({ allowances, unit, fractions, lines, ...styled });
  const tried =
    options.nearest === undefined ? undefined : triedOn(options.nearest, asked, list, io);
  io.progress(`drafting ${counted(entries.length, 'body', 'bodies')}`);
  const made = await makeBodies(list, draftBodies(list, entries, asked), tried, options);
  const isTypedSo = list.entries.some(({ cells }) => cells.some((cell) => hasFractions(cell.text)));
  const display = displayAsTyped({ unit, fractions }, list.unit, isTypedSo);
  const anonymous = options.anonymous ?? false;
  const tables = bodyTables(made.records, made.refused, { columns: list, display, anonymous });
  const written = await io.write(outFolder(path, options), [...tables, ...made.files], {
    set: 'draft',
    replace: options.replace,
  });
  const drafted: DraftedList = { list, ...made, written, tried: tried?.file, display };
  return tell(io, 'draft', options, {
    exitCode: hasTrouble(drafted) ? 1 : 0,
    words: () => draftReport(drafted, options, io.color),
    brief: () => namesReport(written),
    facts: () => draftFacts(drafted, anonymous),
  });
}

/** A list that is too long to be read as a whole is told how it is read. */
function readList(io: Io, path: string): BodyList {
  try {
    const { text, file } = readNamed(io, path);
    return readBodyList(text, file);
  } catch (error) {
    const isTooLong = error instanceof InputError && error.code === 'file-too-large';
    if (!isTooLong || error.place.column !== undefined || path === STDIN) throw error;
    throw new InputError(error.code, { ...error.problem, orField: 'stream' });
  }
}

/** Throws InputError `bad-option` for what only a streamed run does. */
function refuseStreamed(options: DraftCommandOptions): void {
  const alone = (['points', 'drawings', 'workers'] as const).find(
    (name) => options[name] !== undefined,
  );
  if (alone === undefined) return;
  throw new InputError('bad-option', {
    what: 'the option belongs to lists of any length; bodies drafted one by one have all of their files',
    allowed: 'together with --stream',
    got: optionOf(alone),
    place: { field: alone },
  });
}

/** Throws InputError `unit-missing` for a setting that list and chart would read in units of their own. */
function triedOn(path: string, request: BodyRequest, list: BodyList, io: Io): TriedRange {
  const { text, file } = readNamed(io, path);
  const chart = readChart(text, file);
  if (chart.unit !== list.unit) {
    const { style = DEFAULT_STYLE, set = {} } = request;
    const choice = typeof style === 'string' ? { style: findStyle(style), settings: [] } : style;
    const asked = Object.entries(set).map(([parameter, value]) => ({
      ...{ parameter, value, note: '' },
      place: { field: 'set' },
    }));
    const why = `${list.file} is in ${UNIT_WORDS[list.unit]} and ${file} in ${UNIT_WORDS[chart.unit]}`;
    refuseBareLengths(choice.style, [...choice.settings, ...asked], why);
  }
  return triedRange(chart, request);
}

function hasTrouble({ records, refused }: DraftedList): boolean {
  return refused.length > 0 || records.some(({ verdict }) => verdict.kind === 'mend');
}

type Made = Pick<DraftedList, 'style' | 'records' | 'refused' | 'unprintable'> & {
  readonly files: readonly (ResultFile | BinaryFile)[];
};

/** Makes the files of each body, and keeps of its draft what the tables need. */
async function makeBodies(
  list: BodyList,
  bodies: Iterable<DraftedBody | RefusedBody>,
  tried: TriedRange | undefined,
  options: DraftCommandOptions,
): Promise<Made> {
  const records: BodyRecord[] = [];
  const refused: RefusedBody[] = [];
  const unprintable: BodyEntry[] = [];
  const files: (ResultFile | BinaryFile)[] = [];
  let style = '';
  for (const body of bodies) {
    if ('error' in body) {
      refused.push(body);
      continue;
    }
    const { entry } = body;
    style = body.result.range.draft.style.name;
    records.push(bodyRecord(body, tried));
    const named =
      options.anonymous === true
        ? body.result
        : namedResult(body.result, distinctName(list, entry));
    files.push(bodyDrawing(entry, named));
    const { printed, isNamed } = await printedBody(named, body.result, options);
    if (!isNamed) unprintable.push(entry);
    files.push(...printed.map((file) => ({ ...file, name: `${bodyStem(entry)}-${file.name}` })));
  }
  return { style, records, refused, unprintable, files };
}

/** The sheets under the name of a body, or under its place where the font lacks a letter of the name. */
async function printedBody(
  named: ChartGrade,
  placed: ChartGrade,
  { paper, ...print }: DraftCommandOptions,
): Promise<{ readonly printed: readonly BinaryFile[]; readonly isNamed: boolean }> {
  if (paper === undefined) return { printed: [], isNamed: true };
  const { printFiles } = await import('../files/print-files');
  try {
    return { printed: await printFiles(named, { ...print, paper }), isNamed: true };
  } catch (error) {
    const isLetter = error instanceof InputError && error.code === 'character-unprintable';
    if (!isLetter || named === placed) throw error;
    return { printed: await printFiles(placed, { ...print, paper }), isNamed: false };
  }
}

/** The bodies asked for by their rows or columns, all if none is. Throws InputError `bad-option`. */
function wantedEntries(list: BodyList, asked: readonly string[] | undefined): readonly BodyEntry[] {
  if (asked === undefined) return list.entries;
  // As tables call them.
  const word = list.layout === 'size-rows' ? 'row' : 'column';
  const rows = asked.map((row) => (row.startsWith(`${word} `) ? row.slice(word.length + 1) : row));
  const numbers = new Set(list.entries.map(({ number }) => String(number)));
  const stray = rows.find((row) => !numbers.has(row));
  if (stray === undefined) return list.entries.filter(({ number }) => rows.includes(`${number}`));
  const [first] = list.entries;
  const last = list.entries.at(-1);
  throw new InputError('bad-option', {
    what: 'no body of the list stands there',
    allowed:
      first === undefined || last === undefined
        ? 'a list with bodies in it'
        : `${placeName(list, first)} to ${placeName(list, last)}, by their numbers`,
    got: stray,
    place: { file: list.file, field: 'rows' },
  });
}

function draftFacts({ list, style, records, refused, written }: DraftedList, anonymous: boolean) {
  return {
    bodies: list.file,
    style,
    unit: list.unit,
    drafted: records.map(({ entry, body, verdict, measures, nearest }) => ({
      body,
      ...(anonymous ? {} : { name: entry.name }),
      verdict: verdictFacts(verdict),
      measures: Object.fromEntries(measures.map(({ name, value }) => [name, value])),
      ...(nearest === undefined ? {} : { nearest }),
    })),
    not_read: notReadFacts([...notReadInList(list), ...(records[0]?.findings ?? [])]),
    refused: refused.map(({ entry, error }) => ({
      body: placeName(list, entry),
      code: error.code,
      place: { ...error.place, size: undefined },
    })),
    ...writtenFacts(written),
  };
}
