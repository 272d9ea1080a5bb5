/** `skirtgrade assess` of a folder: every sheet in it marked, and a table, shared slips and pages written. */
import { basename, resolve } from 'node:path';
import { InputError } from '../errors';
import type { Assessed, ClassRequest, Handed, SharedSlip } from '../study/mark/mark-class';
import { markClass, sharedSlips } from '../study/mark/mark-class';
import { isRight } from '../study/mark/mark-sheet';
import { counted } from '../table/counted';
import type { AssessCommandOptions, AssessFiles } from './assess-case';
import type { HintBefore } from './assess-hint';
import type { Mark } from './class-files';
import { bareName, classFiles, markOf } from './class-files';
import type { ExitCode, Io } from './io';
import { tell } from './json-document';
import { writtenFacts } from './json-facts';
import { PROJECT_FILE } from './project-options';
import { readNamed } from './read-named';
import { inStyle } from './style-request';
import { textTable, wrappedParagraph } from './text-table';
import { droppedReport, namesReport } from './written-report';

/** A call with a folder, and the names of the files in it. */
interface ClassFolder extends AssessFiles {
  readonly names: readonly string[];
}

/** What a sheet may be called; anything else in the folder is told as not looked at. */
const SHEET_NAME = /^[^.].*\.(?:csv|tsv|txt)$/iu;

/**
 * Marks every sheet of a folder and writes into another. Gives 0 if all are right in every cell, otherwise 1;
 * throws InputError where none can be read, for a folder without sheets, and what writing throws.
 */
export async function assessClass(
  folder: ClassFolder,
  request: ClassRequest,
  options: AssessCommandOptions,
  io: Io,
): Promise<ExitCode> {
  const { style, json, quiet, verbose = false, replace } = options;
  const level = levelOf(options.hint);
  const { sheets, others } = sheetsIn(folder, options, io);
  const out = outOf(folder.sheet, options.out, io);
  const assessed = inStyle(style, () =>
    markClass(
      request,
      sheets.map((path) => handed(path, io)),
      (file) => {
        io.progress(`assessing ${file}`);
      },
    ),
  );
  const shared = sharedSlips(assessed);
  const written = await io.write(out, classFiles(assessed, shared, level), {
    ...{ set: 'marks', replace },
  });
  const marks = assessed.map(markOf);
  return tell(
    io,
    'assess',
    { json, quiet },
    {
      exitCode: assessed.every(({ marking }) => marking !== undefined && isRight(marking)) ? 0 : 1,
      words: () =>
        marksReport(marks, assessed) +
        sharedReport(shared, verbose) +
        othersReport(others) +
        wrappedParagraph(`Written to ${out}: ${written.names.join(', ')}`, 2) +
        droppedReport(written.dropped),
      brief: () => namesReport(written),
      facts: () => ({
        ...{ sheets: marks.map(markFacts), not_sheets: others, hint: level },
        shared: shared.map(({ id, words, sheets: own }) => ({
          ...{ name: id, words, sheets: own.map(bareName) },
        })),
        ...writtenFacts(written),
      }),
    },
  );
}

/** One file that cannot be read does not stop the others. */
function handed(path: string, io: Io): Handed {
  try {
    return readNamed(io, path);
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { file: path, refused: error };
  }
}

/** A page for a student has a question to ask at most. Throws InputError `bad-option`. */
function levelOf(hint = '3'): HintBefore {
  const level = ([1, 2, 3] as const).find((one) => String(one) === hint);
  if (level !== undefined) return level;
  throw new InputError('bad-option', {
    what: 'pages for students do not tell the answer',
    allowed: '1, 2 or 3 with a folder; 4 with one sheet',
    got: hint,
    place: { field: 'hint' },
  });
}

/** Throws InputError `file-unreadable` for a folder without sheets. */
function sheetsIn(
  { sheet: folder, chart: drafted, names }: ClassFolder,
  { pattern, rules, chart, seams }: AssessCommandOptions,
  io: Io,
): { readonly sheets: readonly string[]; readonly others: readonly string[] } {
  const known = [drafted, pattern, rules, chart, seams].flatMap((path) =>
    path === undefined ? [] : [resolve(io.pathOf(path))],
  );
  const at = (name: string): string => `${folder.replace(/[\\/]+$/u, '')}/${name}`;
  const own = names.filter(
    (name) => name !== PROJECT_FILE && !known.includes(resolve(io.pathOf(at(name)))),
  );
  const sheets = own.filter((name) => SHEET_NAME.test(name));
  if (sheets.length > 0)
    return {
      sheets: sheets.map(at),
      others: own.filter((name) => !SHEET_NAME.test(name) && !name.startsWith('.')),
    };
  throw new InputError('file-unreadable', {
    what: 'the folder has no sheets',
    allowed: 'files that end in .csv, .tsv or .txt',
    got: own.length === 0 ? 'nothing else' : own.slice(0, 3).join(', '),
    place: { file: folder },
  });
}

/** Where the marks go. Throws InputError `bad-option` for the folder of the sheets: they would be sheets next time. */
function outOf(folder: string, out: string | undefined, io: Io): string {
  const target = out ?? `output/marks-${basename(resolve(io.pathOf(folder)))}`;
  if (resolve(io.pathOf(target)) !== resolve(io.pathOf(folder))) return target;
  throw new InputError('bad-option', {
    what: 'the marks would lie among the sheets',
    allowed: 'another folder',
    got: target,
    place: { field: 'out' },
  });
}

function marksReport(marks: readonly Mark[], assessed: readonly Assessed[]): string {
  const show = (number: number | undefined): string => number?.toFixed(0) ?? '-';
  const right = assessed.filter(({ marking }) => marking !== undefined && isRight(marking)).length;
  const rows = marks.map(({ sheet, score, wrong, blank, slips }) => [
    ...[sheet, show(score), show(wrong), show(blank), slips.length.toFixed(0)],
  ]);
  return (
    wrappedParagraph(`${counted(marks.length, 'sheet')}, ${right} of them right in every cell.`) +
    `\n${textTable([['sheet', 'score', 'wrong', 'blank', 'slips'], ...rows])}\n` +
    marks
      .filter(({ note }) => note !== '')
      .map(({ sheet, note }) => wrappedParagraph(`${sheet}: ${note}`, 2))
      .join('')
  );
}

/** The slips of two sheets or more; all of them in many words. */
function sharedReport(shared: readonly SharedSlip[], verbose: boolean): string {
  const told = shared.filter(({ sheets }) => verbose || sheets.length > 1);
  if (told.length === 0) return '';
  return (
    'Slips that several sheets share\n' +
    told
      .map(({ words, sheets }) =>
        wrappedParagraph(`  ${sheets.length}: ${words} (${sheets.map(bareName).join(', ')})`, 4),
      )
      .join('') +
    '\n'
  );
}

function othersReport(others: readonly string[]): string {
  return others.length === 0
    ? ''
    : wrappedParagraph(`Not sheets, so not read: ${others.join(', ')}`, 2);
}

function markFacts({ sheet, score, right, asked, wrong, blank, slips, note }: Mark): object {
  return {
    ...{ sheet, score: score ?? null, right: right ?? null, asked: asked ?? null },
    ...{ wrong: wrong ?? null, blank: blank ?? null, slips, note },
  };
}
