/** What `grade` tells on the terminal of any graded pattern. */
import { present } from '../lists/present';
import { measureOf } from '../grade/graded-pattern';
import { stepsOf } from '../grade/rules';
import type { GradeResult } from '../jobs/grade-result';
import type { PrintFile } from '../print/print-drawing';
import { SEAM_MATCH } from '../tolerance';
import { UNIT_WORDS, showLength, showNumber } from '../units';
import { verdictOf } from '../verdict/verdict';
import type { Telling } from './json-document';
import type { Io } from './io';
import { notReadLine } from './not-read-line';
import { wrappedParagraph, textTable } from './text-table';
import type { WrittenFiles } from './write-files';
import { findingsInWords, verdictReport } from './verdict-report';
import { writtenReport } from './written-report';

/**
 * The report in lines of at most 80 columns, lengths in the unit of the result; `written` and `printed`
 * are its files, `color` marks the verdict and severities.
 */
export function gradeReport(
  result: GradeResult,
  written: WrittenFiles,
  printed: readonly PrintFile[],
  { color, ...telling }: Telling & Pick<Io, 'color'>,
): string {
  const { range, display, findings } = result;
  const labels = range.sizes.map(({ label }) => label);
  return [
    wrappedParagraph(heading(result)),
    verdictReport(verdictOf(findings, labels, display), color, 'in findings.csv'),
    ...notReadLine(findings, 'in findings.csv'),
    ...(telling.verbose === true ? tables(result) : []),
    ...findingsInWords(findings, telling, color),
    writtenReport(written, printed),
    wrappedParagraph(`${toOpen(written)}Sew a toile first. ${result.made.caution}`),
  ].join('\n');
}

/** What was graded, from where and how. */
function heading({ pattern, made, range, display }: GradeResult): string {
  const { sizes, roundingStep } = range;
  const isGraded = sizes.length > 1;
  const told = present([
    range.blend ?? (isGraded ? `${sizes.length} sizes` : '1 size, drafted and not graded'),
    made.of,
    `base ${range.base}`,
    range.stackPoint !== '' && `stacked on ${range.stackPoint}`,
    isGraded &&
      (roundingStep === undefined
        ? 'rules exact'
        : `rules rounded to ${showLength(roundingStep, { ...display, fractions: true })}`),
  ]);
  return `${pattern.file}: ${told.join(', ')}`;
}

/** What was measured, what was derived, and which seams are apart. */
function tables(result: GradeResult): readonly string[] {
  const { shown, range, rules, seams } = result;
  const isMeasured = shown.every(({ measures }) => measures.length > 0);
  return present([
    isMeasured && sizesTable(result),
    !rules.typed && range.sizes.length > 1 && stepTable(result),
    seams.length > 0 && seamsTable(result),
  ]);
}

const SHOWN = [
  ['waist', 'waist'],
  ['hip', 'hip'],
  ['hem', 'hem'],
  ['side_seam_front', 'front side'],
  ['side_seam_back', 'back side'],
] as const;

function sizesTable({ shown, range, display }: GradeResult): string {
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
function stepTable({ range, display }: GradeResult): string {
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

/** By how much the first side of a seam is longer than the second and its ease, where it is. */
function seamsTable({ seams, shown, range, display }: GradeResult): string {
  const apart = seams.filter(({ walks }) => walks.some(({ gap }) => Math.abs(gap) > SEAM_MATCH));
  const meeting = seams.length - apart.length;
  const met = wrappedParagraph(`Seams that meet in every size: ${meeting} of ${seams.length}`);
  if (apart.length === 0) return met;
  const columns = range.sizes.flatMap((size, i) => (shown.includes(size) ? [i] : []));
  const header = ['seam', ...columns.map((i) => range.sizes[i]?.label ?? '')];
  const rows = apart.map(({ pair, walks }) => [
    pair.name,
    ...columns.map((i) => showNumber(walks[i]?.gap ?? NaN, display)),
  ]);
  const title = `Seams that are apart, by how much in ${UNIT_WORDS[display.unit]}\n`;
  return `${met}${title}${textTable([header, ...rows])}`;
}

/** The page, the drawing of all sizes, or the first there is. */
function toOpen({ folder, names }: WrittenFiles): string {
  if (names.includes('page.html')) return `Open ${folder}/page.html in a browser to see it. `;
  const drawing = names.includes('nest.svg')
    ? 'nest.svg'
    : names.find((name) => name.endsWith('.svg'));
  return drawing === undefined ? '' : `Open ${folder}/${drawing} to see it. `;
}
