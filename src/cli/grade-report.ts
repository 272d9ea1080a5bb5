/** What `grade` tells on the terminal of any graded pattern; what only one kind has comes as words. */
import type { GradeResult } from '../jobs/grade-result';
import type { PrintFile } from '../print/print-drawing';
import { showLength } from '../units';
import { findingsReport } from './findings-report';
import { wrappedParagraph } from './text-table';
import type { WrittenFiles } from './write-files';
import { writtenReport } from './written-report';

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
 * are its files, `color` marks severities.
 */
export function gradeReport(
  { range, display, findings }: GradeResult,
  { heading, tables, caution }: OwnWords,
  written: WrittenFiles,
  printed: readonly PrintFile[],
  color: boolean,
): string {
  const rounding =
    range.roundingStep === undefined
      ? 'rules exact'
      : `rules rounded to ${showLength(range.roundingStep, display)}`;
  return [
    wrappedParagraph(`${heading}, ${rounding}`),
    ...tables,
    findingsReport(findings, color, 'in findings.csv'),
    writtenReport(written, printed),
    wrappedParagraph(`Sew a toile first. ${caution}`),
  ].join('\n');
}
