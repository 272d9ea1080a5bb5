/** An exercise, its hints before answers, and derivations, as the command line has them. */
import { grouped } from '../../lists/grouped';
import { InputError } from '../../errors';
import { gradeUnchecked } from '../../jobs/grade-chart';
import type { BoardLine } from '../../study/explain/board';
import { board } from '../../study/explain/board';
import { derivation } from '../../study/explain/derivation';
import { USUAL_RULER } from '../../study/explain/usual-ruler';
import type { Lesson as Taught } from '../../study/exercise/lessons';
import { LESSONS } from '../../study/exercise/lessons';
import { taskWords } from '../../study/exercise/task-words';
import { exercise } from '../../study/exercise/exercise';
import { QUARTER_METHOD } from '../../draft/default-style';
import { askTold, countTold, hintOf } from '../../study/mark/hints';
import type { MarkedCell } from '../../study/mark/marked-cells';
import type { Marking } from '../../study/mark/mark-sheet';
import { isBlankSheet, isRight, markSheet } from '../../study/mark/mark-sheet';
import { rowName } from '../../study/mark/series';
import type { LengthDisplay } from '../../units';
import { showNumber } from '../../units';
import { CHART_FILE, SHEET_FILE } from '../lesson';
import type { AskedExercise, Lesson } from '../state';
import type { AnswerView, MarkView, Pattern } from '../wish';
import { requestOf } from './graded';
import { pieceViews } from './piece-view';

/** The exercise with its sheet to be filled in. Throws InputError for a seed. */
export function lessonOf(asked: AskedExercise): Lesson {
  const made = exercise(asked);
  const { base, files, difficulty } = made;
  const { set, points }: Taught = LESSONS[difficulty];
  const textOf = (name: string): string => files.find((file) => file.name === name)?.text ?? '';
  return {
    ...{ ...asked, base, style: QUARTER_METHOD, reached: 0 },
    ...{
      task: taskWords(made)
        .join(' ')
        .replace(/^./u, (first) => first.toUpperCase()),
    },
    ...(set === undefined ? {} : { set }),
    ...(points === undefined ? {} : { points }),
    ...{ chart: textOf(CHART_FILE), sheet: textOf(SHEET_FILE) },
  };
}

/** What the last hint of a lesson tells. Throws InputError for a sheet that cannot be read. */
export function markView(lesson: Lesson): MarkView {
  const { chart, base, style, unit, set, points } = lesson;
  const { level, sheet } = lesson.hint ?? { level: 1, sheet: lesson.sheet };
  const marking = markSheet({
    ...{ chart, file: CHART_FILE, base, style, sheet, sheetFile: SHEET_FILE },
    ...(set === undefined ? {} : { set }),
    ...(points === undefined ? {} : { points }),
  });
  const { rows = { wrong: [], blank: [] }, asks = [] } = hintOf(marking, level);
  const isDone = isRight(marking);
  return {
    line: isDone
      ? 'Every cell is right.'
      : isBlankSheet(marking)
        ? 'Nothing is filled in yet.'
        : countTold(marking),
    isRight: isDone,
    ...rows,
    asks: asks.map(askTold),
    ...(level < 4 ? {} : { answer: answerView(marking, { unit, fractions: unit === 'in' }) }),
  };
}

function answerView(marking: Marking, display: LengthDisplay): AnswerView {
  const { key, cells, cause, diagnosis, asked, reference, worn } = marking;
  const { plans, sizes } = reference;
  const told = (cell: MarkedCell | undefined): string => {
    if (cell === undefined) return '';
    const right = showNumber(cell.right, display);
    if (cell.verdict === 'right') return right;
    return cell.given === undefined
      ? `${right}, blank`
      : `${right}, not ${showNumber(cell.given, display)}`;
  };
  return {
    display,
    sizes: key.sizes,
    slips: [
      ...(cause === undefined ? [] : [cause.cause]),
      ...diagnosis.found.map(({ slip }) => slip),
    ].map(({ words, advice }) => [words, advice]),
    rows: [...grouped(cells, rowName)].map(([name, own]) => [
      name,
      ...key.sizes.map((size, i) =>
        i === key.base ? '0' : told(own.find((cell) => cell.size === size)),
      ),
    ]),
    points: asked.points.map(({ piece, point }) => `${piece}.${point}`),
    outlines: sizes.map(({ label, pieces }, i) => ({
      size: label,
      pieces: pieceViews({
        plans,
        sizes: [pieces, worn[i]?.made ?? []].map((own) => ({ pieces: own, cutPieces: undefined })),
      }).filter(({ name }) => asked.pieces.includes(name)),
    })),
  };
}

/** The rule of a point as on a board, of a skirt that is drafted. Throws InputError for any other. */
export function derivedBoard(pattern: Pattern, point: string): readonly BoardLine[] {
  if (pattern.own !== undefined)
    throw new InputError('bad-option', {
      what: 'the rules of a pattern of your own are derived from nothing',
      allowed: 'a skirt that is drafted from a chart',
      place: { point },
    });
  const result = gradeUnchecked(requestOf(pattern));
  const { unit } = result.display;
  return board(derivation(result, point, USUAL_RULER[unit]), { unit, fractions: true });
}
