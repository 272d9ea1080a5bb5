/** What `grade --pattern` tells on the terminal: pieces, seams of each size, findings, files. */
import type { PatternResult } from '../grade-pattern';
import { UNIT_WORDS, showLength, showNumber } from '../units';
import { findingsReport } from './findings-report';
import { writtenReport } from './grade-report';
import { paragraph, textTable } from './text-table';
import type { WrittenFiles } from './write-files';

export function patternReport(
  result: PatternResult,
  written: WrittenFiles,
  color: boolean,
): string {
  return [
    heading(result),
    ...(result.seams.length === 0 ? [] : [seamsTable(result)]),
    findingsReport(result.findings, color, 'in findings.csv'),
    writtenReport(written),
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

/** By how much the first side of each seam is longer than the second and its ease. */
function seamsTable({ seams, range, display }: PatternResult): string {
  const header = ['seam', ...range.sizes.map(({ label }) => label)];
  const rows = seams.map(({ pair, walks }) => [
    pair.name,
    ...walks.map(({ gap }) => showNumber(gap, display)),
  ]);
  return `Seams, how far apart in ${UNIT_WORDS[display.unit]}\n${textTable([header, ...rows])}`;
}
