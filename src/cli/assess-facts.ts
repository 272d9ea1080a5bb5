/** An assessed sheet as the values of a document. */
import { notReadFindings } from '../check/not-read';
import type { Run } from '../study/mark/explanations';
import type { Marking } from '../study/mark/mark-sheet';
import type { Reference } from '../study/mark/reference';
import type { Sureness } from '../study/mark/sureness';
import { surenessOf } from '../study/mark/sureness';
import { diagnosed } from './assess-report';
import { notReadFacts } from './not-read-line';
import { apartWords } from './sureness-words';

/** The score, every cell, the cause of the whole sheet, and the slips with the cells they explain. */
export function assessFacts(marking: Marking): object {
  const { sheet, reference, convention, tolerance, asked, cells, decisions, cause } = marking;
  const { found, unexplained } = marking.diagnosis;
  const sheetOf = diagnosed(marking);
  const runFacts = ({ series, sizes }: Run): object => ({
    piece: series.piece,
    point: series.point,
    axis: `d${series.axis}`,
    sizes: sizes.map((i) => marking.key.sizes[i]),
  });
  return {
    sheet: sheet.file,
    ...referenceFacts(reference),
    tolerance,
    pieces: asked.pieces,
    points: asked.points.map(({ piece, point }) => `${piece}.${point}`),
    not_asked: marking.notAsked.map(({ piece, point, axis }) => `${piece}.${point} d${axis}`),
    answered: marking.answered,
    blank: marking.blanks,
    zeros: Object.fromEntries(convention.zeros),
    y: convention.up ? 'up' : 'down',
    not_read: notReadFacts(notReadFindings(marking.unread)),
    decisions,
    cause:
      cause === undefined
        ? null
        : {
            name: cause.cause.id,
            words: cause.cause.words,
            advice: cause.cause.advice,
            or: cause.alike.map(({ words }) => words),
          },
    slips: found.map((one) => ({
      name: one.slip.id,
      words: one.slip.words,
      ...surenessFacts(surenessOf(sheetOf, one)),
      or: one.alike.map(({ words }) => words),
      would_tell: one.alike.map((other) => apartWords(sheetOf, one, other)),
      cells: one.runs.map(runFacts),
    })),
    unexplained: unexplained.map(runFacts),
    cells: cells.map(({ axis, form, ...cell }) => ({
      ...cell,
      axis: form === 'step' ? `step_d${axis}` : `d${axis}`,
    })),
  };
}

function surenessFacts({ grade, numbers, isExact, rows, couldBe }: Sureness): object {
  return { sureness: grade, numbers, exact: isExact, rows, rows_that_could: couldBe };
}

/** What a sheet is held against: a chart and a style, or a pattern and its rules. */
export function referenceFacts({ grade, chart }: Reference): object {
  const { range, pattern, rules } = grade;
  return {
    chart: chart?.file ?? null,
    ...(range.draft === undefined
      ? { pattern: pattern.file, rules: rules.file }
      : { style: range.draft.style.name }),
    base: range.base,
  };
}
