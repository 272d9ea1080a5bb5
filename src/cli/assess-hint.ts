/** What `assess --hint` tells of a sheet, in words and as values. */
import { notReadFindings } from '../check/not-read';
import { askTold, countTold, hintOf } from '../study/mark/hints';
import type { HintLevel } from '../study/mark/hint-levels';
import type { Marking } from '../study/mark/mark-sheet';
import { isBlankSheet, isRight } from '../study/mark/mark-sheet';
import { referenceFacts } from './assess-facts';
import { assessBrief, notAsked } from './assess-report';
import { notReadFacts, notReadLine } from './not-read-line';
import { wrappedParagraph } from './text-table';

/** The levels before the answer. */
export type HintBefore = Exclude<HintLevel, 4>;

/** The hint in lines of at most 80 columns, and which call tells more. */
export function hintReport(marking: Marking, level: HintBefore): string {
  const isOpen = marking.cells.some(({ verdict }) => verdict === 'wrong');
  const next = `${TELLS[level]}: the same call with --hint ${level + 1}`;
  return hintPage(marking, level) + (isOpen ? wrappedParagraph(next) : '');
}

/** The hint alone, as it is handed to whoever made the sheet. */
export function hintPage(marking: Marking, level: HintBefore): string {
  const told = [...notReadLine(notReadFindings(marking.unread)), ...notAsked(marking)];
  if (isBlankSheet(marking)) return [assessBrief(marking), ...told].join('');
  if (isRight(marking)) return [wrappedParagraph('Every cell is right.'), ...told].join('');
  const { rows, asks = [] } = hintOf(marking, level);
  const list = (verdict: string, names: readonly string[] = []): readonly string[] =>
    names.length === 0 ? [] : [wrappedParagraph(`${verdict}: ${names.join(', ')}`, 2)];
  return [
    wrappedParagraph(countTold(marking)),
    ...list('Wrong', rows?.wrong),
    ...list('Blank', rows?.blank),
    ...asks.map((ask) => wrappedParagraph(askTold(ask), 2)),
    ...told,
  ].join('');
}

/** What the level after each tells. */
const TELLS: Readonly<Record<HintBefore, string>> = {
  1: 'Which rows',
  2: 'Which question to ask',
  3: 'The answer',
};

/** The fields of a hint; those of a later level are not there. */
export function hintFacts(marking: Marking, level: HintBefore): object {
  const { sheet, reference, tolerance, unread } = marking;
  const { wrong, blank, rows, asks } = hintOf(marking, level);
  return {
    sheet: sheet.file,
    ...referenceFacts(reference),
    tolerance,
    not_read: notReadFacts(notReadFindings(unread)),
    hint: level,
    wrong,
    blank,
    ...(rows === undefined ? {} : { wrong_rows: rows.wrong, blank_rows: rows.blank }),
    ...(asks === undefined ? {} : { questions: asks }),
  };
}
