/** What is written for a class: a table of marks, the slips that are shared, and a page for each student. */
import type { ResultFile } from '../files/result-file';
import { scoreOf } from '../study/mark/decisions';
import type { Assessed, SharedSlip } from '../study/mark/mark-class';
import { slipsOf } from '../study/mark/mark-class';
import type { Marking } from '../study/mark/mark-sheet';
import { isBlankSheet, isMostlyBlank } from '../study/mark/mark-sheet';
import { writtenCsv } from '../table/written-csv';
import type { HintBefore } from './assess-hint';
import { hintPage } from './assess-hint';
import { optionMessage } from './option-words';
import { wrappedParagraph } from './text-table';

/** The mark of one sheet; numbers are undefined where it is not judged. */
export interface Mark {
  /** The sheet's name without its folder. */
  readonly sheet: string;
  /** Of a hundred; undefined for a sheet that is blank, mostly blank or cannot be read. */
  readonly score: number | undefined;
  readonly right: number | undefined;
  readonly asked: number | undefined;
  /** Cells. */
  readonly wrong: number | undefined;
  readonly blank: number | undefined;
  readonly slips: readonly string[];
  /** Why there is no score. */
  readonly note: string;
}

/** A file's name without its folder. */
export function bareName(file: string): string {
  return file.replace(/^.*[\\/]/u, '');
}

/** The mark of a sheet. */
export function markOf({ file, marking, refused }: Assessed): Mark {
  const sheet = bareName(file);
  const none = { score: undefined, right: undefined, asked: undefined, wrong: undefined };
  if (marking === undefined) {
    const note = refused === undefined ? '' : `not read: ${optionMessage(refused)}`;
    return { sheet, ...none, blank: undefined, slips: [], note };
  }
  if (isBlankSheet(marking)) {
    return { sheet, ...none, blank: marking.blanks, slips: [], note: 'blank' };
  }
  const { decisions, cells, blanks: blank } = marking;
  const score = isMostlyBlank(marking) ? undefined : scoreOf(decisions);
  return {
    sheet,
    score,
    ...{ right: decisions.right, asked: decisions.asked },
    wrong: cells.filter(({ verdict }) => verdict === 'wrong').length,
    blank,
    slips: slipsOf(marking).map(({ id }) => id),
    note: noteOf(marking, score),
  };
}

function noteOf(marking: Marking, score: number | undefined): string {
  if (score !== undefined) return '';
  return isMostlyBlank(marking) ? 'mostly blank' : 'nothing that is asked for moves';
}

/** `marks.csv`, `slips.csv` and a page a sheet, which has the hint of a level. */
export function classFiles(
  assessed: readonly Assessed[],
  shared: readonly SharedSlip[],
  level: HintBefore,
): readonly ResultFile[] {
  const names = pageNames(assessed.map(({ file }) => bareName(file)));
  return [
    { name: 'marks.csv', text: marksCsv(assessed.map(markOf)) },
    { name: 'slips.csv', text: slipsCsv(shared) },
    ...assessed.map((one, i) => ({ name: names[i] ?? '', text: pageOf(one, level) })),
  ];
}

function marksCsv(marks: readonly Mark[]): string {
  const show = (number: number | undefined): string => number?.toFixed(0) ?? '';
  return writtenCsv([
    [
      'sheet',
      'score',
      'right_decisions',
      'decisions',
      'wrong_cells',
      'blank_cells',
      'slips',
      'note',
    ],
    ...marks.map(({ sheet, score, right, asked, wrong, blank, slips, note }) => [
      sheet,
      ...[score, right, asked, wrong, blank].map(show),
      slips.join('; '),
      note,
    ]),
  ]);
}

function slipsCsv(shared: readonly SharedSlip[]): string {
  return writtenCsv([
    ['slip', 'words', 'count', 'sheets'],
    ...shared.map(({ id, words, sheets }) => [
      ...[id, words, sheets.length.toFixed(0), sheets.map(bareName).join('; ')],
    ]),
  ]);
}

/** Sheets that differ by their ending alone keep it. */
function pageNames(sheets: readonly string[]): readonly string[] {
  const stems = sheets.map((sheet) => sheet.replace(/\.\w+$/u, ''));
  const isShared = (stem: string): boolean =>
    stems.filter((other) => other.toLowerCase() === stem.toLowerCase()).length > 1;
  return sheets.map((sheet, i) => {
    const stem = stems[i] ?? sheet;
    return `${isShared(stem) ? sheet : stem}.txt`;
  });
}

function pageOf({ file, marking, refused }: Assessed, level: HintBefore): string {
  const head = `${bareName(file)}\n\n`;
  if (marking !== undefined) return head + hintPage(marking, level);
  const why = refused === undefined ? '' : optionMessage(refused);
  return head + wrappedParagraph(`This sheet cannot be read yet. ${why}`);
}
