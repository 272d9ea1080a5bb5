/** What `grade` tells of a drafted range alone: finished sizes, and the rules of one step. */
import { measureOf } from '../grade/graded-pattern';
import { stepsOf } from '../grade/rules';
import type { DraftResult } from '../jobs/grade-chart';
import { UNIT_WORDS, showNumber } from '../units';
import type { OwnWords } from './grade-report';
import { textTable } from './text-table';

/** The words of a drafted range, lengths in the unit of the result. */
export function draftWords(result: DraftResult): OwnWords {
  const { chart, style, range } = result;
  const isGraded = range.sizes.length > 1;
  return {
    heading:
      `${chart.file}: ${range.blend ?? (isGraded ? `${chart.sizes.length} sizes` : '1 size, drafted and not graded')}, ` +
      `style ${style.name}, base ${range.base}, ` +
      `stacked on ${range.stackPoint}`,
    tables: [sizesTable(result), ...(isGraded ? [stepTable(result)] : [])],
    caution: 'A narrow hem shortens the stride. Standards are voluntary and bodies vary.',
  };
}

const SHOWN = [
  ['waist', 'waist'],
  ['hip', 'hip'],
  ['hem', 'hem'],
  ['side_seam_front', 'front side'],
  ['side_seam_back', 'back side'],
] as const;

/** Nothing where nothing is measured, as on what is no skirt. */
function sizesTable({ shown, range, display }: DraftResult): string {
  if (shown.some(({ measures }) => measures.length === 0)) return '';
  const header = ['size', ...SHOWN.map(([, heading]) => heading)];
  const rows = shown.map((size) => [
    `${size.label}${size.label === range.base ? ' (base)' : ''}`,
    ...SHOWN.map(([name]) => showNumber(measureOf(size, name), display)),
  ]);
  return `Finished measurements in ${UNIT_WORDS[display.unit]}\n${textTable([header, ...rows])}`;
}

/**
 * The panels' rules for the step from the base to its larger neighbor, or to its smaller one at the
 * end of the range. The rules of the other pieces stand in the table of rules.
 */
function stepTable({ range, display }: DraftResult): string {
  const { base } = range.rules;
  const neighbor = range.sizes[base + 1] === undefined ? base - 1 : base + 1;
  const steps = stepsOf(range.rules)[neighbor] ?? [];
  const rows = range.plans.flatMap((plan, p) =>
    (plan.part === 'panel' || plan.part === 'piece' ? plan.pointNames : [])
      .map((name, i) => ({ name, move: steps[p]?.[i] }))
      .filter(({ name }) => !plan.handles.has(name))
      .map(({ name, move }) => [
        plan.name,
        name,
        showNumber(move?.x ?? NaN, display),
        showNumber(move?.y ?? NaN, display),
      ]),
  );
  const title =
    `Rules for the step from ${range.base} to ${range.sizes[neighbor]?.label ?? ''} in ` +
    `${UNIT_WORDS[display.unit]} (x from the center out, y down)\n`;
  return title + textTable([['piece', 'point', 'dx', 'dy'], ...rows], 2);
}
