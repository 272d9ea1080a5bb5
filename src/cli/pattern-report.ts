/** What `grade --pattern` tells on the terminal: pieces, seams of each size, findings, files. */
import type { PatternResult } from '../jobs/grade-pattern';
import type { PrintFile } from '../print/print-drawing';
import { SEAM_MATCH } from '../tolerance';
import { UNIT_WORDS, showLength, showNumber } from '../units';
import { findingsReport } from './findings-report';
import { paragraph, textTable } from './text-table';
import type { WrittenFiles } from './write-files';
import { writtenReport } from './written-report';

/**
 * The report in lines of at most 80 columns, lengths in the unit of the result; `color` marks
 * severities.
 */
export function patternReport(
  result: PatternResult,
  written: WrittenFiles,
  printed: readonly PrintFile[],
  color: boolean,
): string {
  return [
    heading(result),
    ...(result.seams.length === 0 ? [] : [seamsTable(result)]),
    findingsReport(result.findings, color, 'in findings.csv'),
    writtenReport(written, printed),
    paragraph('Sew a toile first. A pattern is graded by its rules; the rules are yours.'),
  ].join('\n');
}

function heading({ pattern, rules, range, display }: PatternResult): string {
  const ruled = rules.ruled.reduce((sum, own) => sum + own.size, 0);
  const pieces = pattern.pieces.length;
  const rounding =
    range.roundingStep === undefined
      ? 'rules exact'
      : `rules rounded to ${showLength(range.roundingStep, display)}`;
  return paragraph(
    `${pattern.file}: ${pieces} ${pieces === 1 ? 'piece' : 'pieces'}, ${ruled} points with rules, ` +
      `${range.sizes.length} sizes, base ${range.base}, ${rounding}`,
  );
}

/** By how much the first side of a seam is longer than the second and its ease, where it is. */
function seamsTable({ seams, shown, range, display }: PatternResult): string {
  const apart = seams.filter(({ walks }) => walks.some(({ gap }) => Math.abs(gap) > SEAM_MATCH));
  const meeting = seams.length - apart.length;
  const met = paragraph(`Seams that meet in every size: ${meeting} of ${seams.length}`);
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
