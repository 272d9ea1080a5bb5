/** What `grade` tells on the terminal of any graded pattern; what only one kind has comes as words. */
import type { GradeResult } from '../jobs/grade-result';
import type { PrintFile } from '../print/print-drawing';
import { showLength } from '../units';
import { verdictOf } from '../verdict/verdict';
import type { Io } from './io';
import type { Telling } from './options';
import { wrappedParagraph } from './text-table';
import type { WrittenFiles } from './write-files';
import { findingsInWords, verdictReport } from './verdict-report';
import { namesReport, writtenReport } from './written-report';

/** What is told of a drafted range or of a given pattern alone. */
export interface OwnWords {
  /** What was graded, without its rounding. */
  readonly heading: string;
  /** Whole lines. */
  readonly tables: readonly string[];
  /** Said at the end. */
  readonly caution: string;
}

/**
 * The report in lines of at most 80 columns, lengths in the unit of the result; `written` and `printed`
 * are its files, `color` marks the verdict and severities.
 */
export function gradeReport(
  { range, display, findings }: GradeResult,
  { heading, tables, caution }: OwnWords,
  written: WrittenFiles,
  printed: readonly PrintFile[],
  { color, ...telling }: Telling & Pick<Io, 'color'>,
): string {
  if (telling.quiet === true) return namesReport(written);
  const rounding =
    range.roundingStep === undefined
      ? ', rules exact'
      : `, rules rounded to ${showLength(range.roundingStep, display)}`;
  const labels = range.sizes.map(({ label }) => label);
  return [
    wrappedParagraph(`${heading}${range.sizes.length > 1 ? rounding : ''}`),
    verdictReport(verdictOf(findings, labels, display), color, 'in findings.csv'),
    ...(telling.verbose === true ? tables : []),
    ...findingsInWords(findings, telling, color),
    writtenReport(written, printed),
    wrappedParagraph(`${toOpen(written)}Sew a toile first. ${caution}`),
  ].join('\n');
}

/** The drawing of all sizes, or the first there is. */
function toOpen({ folder, names }: WrittenFiles): string {
  const drawing = names.includes('nest.svg')
    ? 'nest.svg'
    : names.find((name) => name.endsWith('.svg'));
  return drawing === undefined ? '' : `Open ${folder}/${drawing} to see it. `;
}
