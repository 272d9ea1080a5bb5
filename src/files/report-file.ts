/** The designer's page: the verdict, what is to be decided, and the tables of an envelope. */
import { present } from '../lists/present';
import { counted } from '../table/counted';
import type { GradeResult } from '../jobs/grade-result';
import type { SizeTable } from '../print/size-table';
import { showLength } from '../units';
import { verdictOf } from '../verdict/verdict';
import { countWords, decisionLines, verdictLine } from '../verdict/words';
import { printTables } from './print-tables';
import type { ResultFile } from './result-file';
import type { Changes } from './since-last-run';

/**
 * `report.md`: the verdict in three lines, the style, the decisions, and body, finished garment and `cloth` with a
 * column a size, lengths in both units; what `changed` since the last run, if there was one. The same
 * arguments give the same bytes.
 */
export function reportFile(
  result: GradeResult,
  cloth: readonly SizeTable[] = [],
  changed?: Changes,
): ResultFile {
  const { title, range, display, findings } = result;
  const labels = range.sizes.map(({ label }) => label);
  const verdict = verdictOf(findings, labels, display);
  const decisions = decisionLines(verdict, 'in findings.csv');
  const sizes = counted(labels.length, 'size');
  const parts = present([
    `# ${plain(title)}`,
    [
      `${verdictLine(verdict)}  `,
      `${sizes}: ${plain(labels.join(', '))}; base ${plain(range.base)}.  `,
      `${countWords(verdict)}, in findings.csv.`,
    ].join('\n'),
    plain(madeFrom(result)),
    decisions.length > 0 && '## To decide',
    decisions.length > 0 && decisions.map((text, i) => `${i + 1}. ${plain(text)}`).join('\n'),
    ...(changed === undefined ? [] : changeParts(changed)),
    ...[...printTables(result), ...cloth].flatMap((table) => tableParts(table)),
    // A blend is of measurements, of which typed rules know nothing.
    !result.rules.typed && labels.length > 1 && range.blend === undefined && blendWords(labels),
    'Sew a toile before you cut cloth. Size standards are voluntary and bodies vary.',
  ]);
  return { name: 'report.md', text: `${parts.join('\n\n')}\n` };
}

/** What the pattern was made from, and how the rules were written. */
function madeFrom({ made, range, display }: GradeResult): string {
  const { stackPoint, roundingStep } = range;
  const rules = [
    ...(stackPoint === '' ? [] : [`stacked on ${stackPoint}`]),
    roundingStep === undefined
      ? 'rules exact'
      : `rules rounded to ${showLength(roundingStep, { ...display, fractions: true })}`,
  ].join(', ');
  return `${made.inFull}; ${rules}.`;
}

/** For a customer whose waist is in another size than her hip. */
function blendWords(labels: readonly string[]): string {
  const [waist = '', hip = ''] = labels.slice(-2);
  return (
    `For a body between sizes, a blend such as "waist ${plain(waist)}, hip ${plain(hip)}" is drafted from ` +
    'those measurements and drawn as one line, with its seams checked; the booklet tells how to draw it by hand.'
  );
}

/** What changed, under a heading of its own. */
export function changeParts(
  { words, measures }: Changes,
  heading = 'What changed since the last run',
): readonly string[] {
  return [
    `## ${heading}`,
    ...(words.length === 0 ? [] : [words.map((text) => `- ${plain(text)}`).join('\n')]),
    ...(measures === undefined ? [] : tableParts(measures, '###')),
  ];
}

function tableParts(
  { heading, sizes, rows, notes = [] }: SizeTable,
  level = '##',
): readonly string[] {
  const head = ['', '', ...sizes];
  const lines = rows.flatMap(({ name, detail, lines: units }) =>
    units.map(({ unit, cells }, i) => [
      i === 0 ? name : i === 1 ? (detail ?? '') : '',
      unit,
      ...cells,
    ]),
  );
  const table = [head, head.map(() => '---'), ...lines]
    .map((cells) => `| ${cells.map(plain).join(' | ')} |`)
    .join('\n');
  return [`${level} ${plain(heading)}`, table, ...notes.map(plain)];
}

/** What somebody typed, as it reads: no sign of it marks up the page. */
export function plain(text: string): string {
  return text.replace(/[\\`*_<>|[\]#]/gu, (sign) => `\\${sign}`).replace(/\s+/gu, ' ');
}
