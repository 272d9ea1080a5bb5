/** What `grade` tells on the terminal: sizes, rules of one step, findings, files. */
import { measureOf } from '../grade/graded-range';
import { stepsOf } from '../grade/rules';
import type { GradeResult } from '../jobs/grade-chart';
import type { PrintFile } from '../files/print-files';
import { UNIT_WORDS, showLength, showNumber } from '../units';
import { findingsReport } from './findings-report';
import { paragraph, textTable } from './text-table';
import type { WrittenFiles } from './write-files';
import { writtenReport } from './written-report';

/**
 * The report in lines of at most 80 columns, lengths in the unit of the result; `color` marks
 * severities.
 */
export function gradeReport(
  result: GradeResult,
  written: WrittenFiles,
  printed: readonly PrintFile[],
  color: boolean,
): string {
  return [
    heading(result),
    sizesTable(result),
    stepTable(result),
    findingsReport(result.findings, color, 'in findings.csv'),
    writtenReport(written, printed),
    paragraph(
      'Sew a toile first. A narrow hem shortens the stride. Standards are voluntary and bodies vary.',
    ),
  ].join('\n');
}

function heading({ chart, style, range, display }: GradeResult): string {
  const rounding =
    range.roundingStep === undefined
      ? 'rules exact'
      : `rules rounded to ${showLength(range.roundingStep, display)}`;
  return paragraph(
    `${chart.file}: ${chart.sizes.length} sizes, style ${style.name}, base ${range.base}, ` +
      `stacked on ${range.stackPoint}, ${rounding}`,
  );
}

const SHOWN = ['waist', 'hip', 'hem', 'side_seam_front', 'side_seam_back'] as const;

function sizesTable({ shown, range, display }: GradeResult): string {
  const header = ['size', 'waist', 'hip', 'hem', 'front side', 'back side'];
  const rows = shown.map((size) => [
    `${size.label}${size.label === range.base ? ' (base)' : ''}`,
    ...SHOWN.map((name) => showNumber(measureOf(size, name), display)),
  ]);
  return `Finished measurements in ${UNIT_WORDS[display.unit]}\n${textTable([header, ...rows])}`;
}

/**
 * The panels' rules for the step from the base to its larger neighbor, or to its smaller one at the
 * end of the range. The rules of the other pieces stand in the table of rules.
 */
function stepTable({ range, display }: GradeResult): string {
  const { base } = range.rules;
  const neighbor = range.sizes[base + 1] === undefined ? base - 1 : base + 1;
  const steps = stepsOf(range.rules)[neighbor] ?? [];
  const rows = range.plans.flatMap((plan, p) =>
    (plan.part === 'panel' ? plan.pointNames : [])
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
