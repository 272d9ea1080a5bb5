/** What `grade --pattern` tells of a given pattern alone: the seams of each size. */
import type { PatternResult } from '../jobs/grade-pattern';
import { SEAM_MATCH } from '../tolerance';
import { UNIT_WORDS, showNumber } from '../units';
import type { OwnWords } from './grade-report';
import { wrappedParagraph, textTable } from './text-table';

/** The words of a given pattern, lengths in the unit of the result. */
export function patternWords(result: PatternResult): OwnWords {
  const { pattern, rules, range } = result;
  const ruled = rules.ruled.reduce((sum, own) => sum + own.size, 0);
  const pieces = pattern.pieces.length;
  return {
    heading:
      `${pattern.file}: ${pieces} ${pieces === 1 ? 'piece' : 'pieces'}, ${ruled} points with rules, ` +
      `${range.sizes.length} sizes, base ${range.base}`,
    tables: result.seams.length === 0 ? [] : [seamsTable(result)],
    caution: 'A pattern is graded by its rules; the rules are yours.',
  };
}

/** By how much the first side of a seam is longer than the second and its ease, where it is. */
function seamsTable({ seams, shown, range, display }: PatternResult): string {
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
