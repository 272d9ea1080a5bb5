/** Hints before answers: each level tells one thing more of a marked sheet, and nothing of the next. */
import { grouped } from '../../lists/grouped';
import { counted } from '../../table/counted';
import type { HintLevel } from './hint-levels';
import type { MarkedCell, Verdict } from './marked-cells';
import type { Marking } from './mark-sheet';
import { OPEN_QUESTION, questionOf, questionOfCause } from './questions';
import { rowName } from './series';

/** A question and the rows that it is about; no rows where it is about the whole sheet. */
export interface Ask {
  readonly question: string;
  readonly rows: readonly string[];
}

/** What the hint of a level tells. */
export interface Hint {
  /** Cells. */
  readonly wrong: number;
  readonly blank: number;
  /** From level 2 on, such as `front.side_waist dx`. */
  readonly rows?: { readonly wrong: readonly string[]; readonly blank: readonly string[] };
  /** From level 3 on. */
  readonly asks?: readonly Ask[];
}

/** The hint of a level below the last, in which the answer is told. */
export function hintOf(marking: Marking, level: HintLevel): Hint {
  const { cells } = marking;
  const rowsOf = (verdict: Verdict): readonly string[] => [
    ...grouped(
      cells.filter((cell) => cell.verdict === verdict),
      rowName,
    ).keys(),
  ];
  const count = (verdict: Verdict): number =>
    cells.filter((cell: MarkedCell) => cell.verdict === verdict).length;
  const wrong = rowsOf('wrong');
  return {
    wrong: count('wrong'),
    blank: count('missing'),
    ...(level < 2 ? {} : { rows: { wrong, blank: rowsOf('missing') } }),
    ...(level < 3 ? {} : { asks: asksOf(marking, wrong) }),
  };
}

/** How many cells are wrong and blank, in words. */
export function countTold(marking: Marking): string {
  const { wrong, blank } = hintOf(marking, 1);
  const verb = (count: number): string => (count === 1 ? 'is' : 'are');
  const blanks = blank === 0 ? '' : `, ${blank} ${verb(blank)} blank`;
  return `${wrong} of ${counted(marking.cells.length, 'cell')} ${verb(wrong)} wrong${blanks}.`;
}

/** A question with the rows that it is about, in words. */
export function askTold({ question, rows }: Ask): string {
  const where = rows.length === 0 ? 'of the whole sheet' : `of ${rows.join(', ')}`;
  return `Ask yourself ${where}: ${question}`;
}

/** Each question once: that of the whole sheet first, then as the slips come. */
function asksOf({ cause, diagnosis }: Marking, wrong: readonly string[]): readonly Ask[] {
  const { found, unexplained } = diagnosis;
  const asked = [
    ...found.flatMap(({ slip, runs }) =>
      runs.map(({ series }) => ({ question: questionOf(slip), row: rowName(series) })),
    ),
    ...unexplained.map(({ series }) => ({ question: OPEN_QUESTION, row: rowName(series) })),
  ];
  const covered = new Set(asked.map(({ row }) => row));
  const others = cause === undefined ? wrong.filter((row) => !covered.has(row)) : [];
  const all = [...asked, ...others.map((row) => ({ question: OPEN_QUESTION, row }))];
  return [
    ...(cause === undefined ? [] : [{ question: questionOfCause(cause.cause), rows: [] }]),
    ...[...grouped(all, ({ question }) => question)].map(([question, own]) => ({
      question,
      rows: [...new Set(own.map(({ row }) => row))],
    })),
  ];
}
