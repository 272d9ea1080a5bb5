/** `skirtgrade draft --stream`: bodies in any number, as tables and on wish as drawings. */
import { present } from '../lists/present';
import { counted } from '../table/counted';
import { listedNames } from '../table/near-names';
import { readStreamedList } from '../bodies/streamed-list';
import type { Finding } from '../check/finding';
import { InputError } from '../errors';
import { notReadInList } from '../files/body-files';
import type { DrawingKind } from '../files/streamed-drawings';
import { DRAWING_KINDS } from '../files/streamed-drawings';
import type { DraftCommandOptions } from './draft-command';
import { outFolder } from './grade-request';
import type { ExitCode, Io } from './io';
import { tell } from './json-document';
import { notReadFacts, notReadLine } from './not-read-line';
import { optionOf } from './option-words';
import { STDIN, readNamed } from './read-named';
import { headOf, streamList } from './stream/stream-list';
import type { StreamResult } from './stream/stream-list';
import type { StreamOrder } from './stream/stream-order';
import { isStyleFile, settingsOf } from './style-request';
import { wrappedParagraph } from './text-table';
import { withoutUndefined } from './without-undefined';
import { wholeNumber } from './whole-number';
import { unwritable } from './write-files';
import { namesReport } from './written-report';

/** What is made of each body by itself, which a streamed run does not. */
const NOT_STREAMED = ['paper', 'nearest', 'rows'] as const;

/**
 * Drafts and measures a list of any length. Gives 0, or 1 where a body was set aside; throws InputError for
 * what cannot be used.
 */
export async function streamCommand(
  path: string,
  options: DraftCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const mixed = NOT_STREAMED.find((name) => options[name] !== undefined);
  if (mixed !== undefined || path === STDIN)
    throw new InputError('bad-option', {
      what: 'a streamed run reads a file and writes tables, and drawings if they are asked for',
      allowed: 'the path of a list, without sheets and sizes',
      got: mixed === undefined ? STDIN : optionOf(mixed),
      place: { field: 'stream' },
    });
  refuseLinesAlone(options);
  const folder = outFolder(path, options);
  const order = await orderOf(path, options, io);
  const result = await streamList(order, {
    ...{ list: io.pathOf(path), folder: io.pathOf(folder), given: folder },
    workers: workersOf(options.workers),
    replace: options.replace === true,
    progress: io.progress,
  }).catch((error: unknown) => {
    // What was written stays, and the same call goes on from there.
    throw error instanceof Error && 'syscall' in error ? unwritable(folder, error) : error;
  });
  const { columns } = readStreamedList(order.head, path);
  const unread = notReadInList(columns);
  const unused = columns.columns.filter(({ known }) => !known).map(({ label }) => label.text);
  return tell(io, 'draft', options, {
    exitCode: result.refused > 0 ? 1 : 0,
    words: () => report(path, folder, result, { unread, unused }),
    brief: () => namesReport({ folder, names: result.files }),
    facts: () => ({
      ...{ bodies: path, folder, files: result.files, left: result.left },
      ...{ drafted: result.drafted, refused: result.refused },
      gone_on_from_row: result.goneOnFrom,
      not_read: notReadFacts(unread),
      ...{ columns_not_used: unused, less_hip_than_waist: result.turned },
    }),
  });
}

async function orderOf(path: string, options: DraftCommandOptions, io: Io): Promise<StreamOrder> {
  const { style, set, project, allowances, unit, fractions, lines } = options;
  return {
    file: path,
    ...(await headOf(io.pathOf(path), path)),
    style: isStyleFile(style) ? readNamed(io, style) : style,
    project,
    request: { ...withoutUndefined({ allowances, unit, fractions, lines }), set: settingsOf(set) },
    anonymous: options.anonymous === true,
    points: options.points === true,
    drawings: kindsOf(options.drawings ?? []),
  };
}

/** Throws InputError `bad-option`. */
function kindsOf(asked: readonly string[]): readonly DrawingKind[] {
  const stray = asked.find((kind) => !DRAWING_KINDS.some((known) => known === kind));
  if (stray === undefined) return DRAWING_KINDS.filter((kind) => asked.includes(kind));
  throw new InputError('bad-option', {
    what: 'a body is not drawn as that',
    allowed: DRAWING_KINDS.join(' and '),
    got: stray,
    place: { field: 'drawings' },
  });
}

/** Throws InputError `bad-option` for lines to draw where nothing is drawn. */
function refuseLinesAlone({ lines, drawings }: DraftCommandOptions): void {
  if (lines === undefined || drawings !== undefined) return;
  throw new InputError('bad-option', {
    what: 'lines are chosen for drawings, and a streamed run makes none unless it is asked to',
    allowed: `--drawings ${DRAWING_KINDS.join(' or ')} beside it`,
    got: lines,
    place: { field: 'lines' },
  });
}

/** Threads of a machine at most. The engine's own figure. */
const MOST_WORKERS = 256;

/** Throws InputError `bad-option`. */
function workersOf(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  const field = 'workers';
  const what = 'the number of workers is not usable';
  const allowed = `a whole number from 0, for none beside this thread, to ${MOST_WORKERS}`;
  const count = wholeNumber(text, { field, what, allowed });
  if (count <= MOST_WORKERS) return count;
  throw new InputError('bad-option', { what, allowed, got: text, place: { field } });
}

function report(
  path: string,
  folder: string,
  { drafted, refused, turned, files, left, goneOnFrom, rate }: StreamResult,
  { unread, unused }: { readonly unread: readonly Finding[]; readonly unused: readonly string[] },
): string {
  const perSecond = rate === 0 ? '' : `, ${Math.round(rate)} a second`;
  return present([
    wrappedParagraph(
      `${path}: ${counted(drafted, 'body', 'bodies')} drafted and measured` +
        (refused === 0 ? '' : `, ${refused} set aside, in refused.csv`) +
        perSecond,
    ),
    goneOnFrom !== undefined &&
      wrappedParagraph(`Gone on from row ${goneOnFrom}, where an earlier run was stopped.`),
    ...notReadLine(unread),
    unused.length > 0 &&
      wrappedParagraph(
        `Not known as measurements: ${listedNames(unused)}. What a style needs and a list has not is the style's.`,
      ),
    turned > 0 &&
      wrappedParagraph(
        `${counted(turned, 'body has', 'bodies have')} less hip than waist: see that no columns are exchanged.`,
      ),
    wrappedParagraph(`Written to ${folder}: ${files.join(', ')}`, 2),
    left.length > 0 &&
      wrappedParagraph(`Of another run, and not written anew: ${left.join(', ')}.`),
    wrappedParagraph(
      'Drafted and measured, not checked: draft those that you cut without --stream. Bodies are told by ' +
        'their rows; no name is written.',
    ),
  ]).join('');
}
