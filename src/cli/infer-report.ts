/** What `infer` tells: increments, residuals, what stays unknown, and the nearest tables. */
import { present } from '../lists/present';
import { notReadFindings } from '../check/not-read';
import type { GirthStep } from '../study/infer/compare-tables';
import { nearestTables } from '../study/infer/compare-tables';
import type { Inference } from '../study/infer/infer-increments';
import type { LeftOut } from '../study/infer/inferred-sizes';
import { tableSource } from '../standards/published-table';
import { RULE_RIGHT } from '../tolerance';
import type { LengthDisplay } from '../units';
import { UNIT_WORDS, showLength, showNumber } from '../units';
import { notReadLine } from './not-read-line';
import { columnsTable, wrappedParagraph, textTable } from './text-table';

/** Tables shown; the others come less near. */
const MOST = 4;

/** The report in lines of at most 80 columns; a dash stands for what the sheet cannot tell. */
export function inferReport(inference: Inference, display: LengthDisplay): string {
  return [
    heading(inference, display),
    ...notReadLine(notReadFindings(inference.unread)),
    ...contradictions(inference, display),
    incrementsTable(inference, display),
    ...intervalsTable(inference, display),
    residualWords(inference, display),
    unknownWords(inference),
    tablesReport(inference, display),
  ].join('\n');
}

function heading(
  { sheet, style, base, zeros, upIsTaken }: Inference,
  display: LengthDisplay,
): string {
  const zero = [...zeros].map(([piece, points]) => `${piece} ${points.join(' and ')}`);
  return (
    wrappedParagraph(
      `${sheet.file}: the body increments that its rules imply in style ${style}, base ${base}, ` +
        `${UNIT_WORDS[display.unit]}; zero at ${zero.length === 0 ? 'center_waist' : zero.join(', ')}`,
    ) +
    (upIsTaken
      ? wrappedParagraph(
          'Read with y up: the sheet does not say, and with y down its lengths would shrink as ' +
            'its girths grow. If they do, a line "# y: down" in the sheet tells.',
        )
      : '')
  );
}

const WHY: Readonly<Record<LeftOut['why'], string>> = {
  against: 'the other cells agree without it',
  either: 'it or another one that is named here is wrong, and nothing tells which',
  alone: 'no other cell speaks against it, but the sizes beside it do',
};

/** The cells that were left out, each with what it should be. */
function contradictions({ sizes }: Inference, display: LengthDisplay): readonly string[] {
  const lines = sizes.flatMap(({ label, leftOut }) =>
    leftOut.map(({ cell, given, meant, why }) =>
      wrappedParagraph(
        `- ${cell} of size ${label} is ${showNumber(given, display)}` +
          `${meant === undefined ? '' : ` and should be ${showNumber(meant, display)}`}: ${WHY[why]}`,
        2,
      ),
    ),
  );
  return present([
    lines.length > 0 && `Left out, since the sheet contradicts itself\n${lines.join('')}`,
  ]);
}

/** Cumulative from the base, and what is left over in each size. */
function incrementsTable({ measurements, sizes, base }: Inference, display: LengthDisplay): string {
  const show = (mm: number | undefined): string =>
    mm === undefined ? '?' : showNumber(mm, display);
  const rows = sizes.map(({ label, increments, residual }) => [
    label === base ? `${label} (base)` : label,
    ...increments.map(show),
    show(residual),
  ]);
  return `From the base\n${columnsTable([['size', ...measurements, 'left over'], ...rows])}`;
}

/** Between which bounds each increment lies, since many bodies round to one sheet. */
function intervalsTable(
  { measurements, sizes, base, mark }: Inference,
  display: LengthDisplay,
): readonly string[] {
  if (mark === undefined || sizes.every(({ within }) => within === undefined)) return [];
  const rows = sizes
    .filter(({ label }) => label !== base)
    .map(({ label, within }) => [
      label,
      ...measurements.map((_, k) => {
        const [least, most] = within?.[k] ?? [-Infinity, Infinity];
        return Number.isFinite(least + most)
          ? `${showNumber(least, display)} to ${showNumber(most, display)}`
          : '?';
      }),
    ]);
  return [
    wrappedParagraph(
      `If the cells are rounded to marks of ${showLength(mark, display)}, which all of them lie on, ` +
        'the increments lie within these bounds, and every body in them may be meant',
    ) + columnsTable([['size', ...measurements], ...rows]),
  ];
}

/** Whether cells were left out, or some contradict one another and none could be blamed. */
export function isContradictory({ sizes }: Inference): boolean {
  return sizes.some(
    ({ leftOut, worst }) => leftOut.length > 0 || (worst !== undefined && worst.miss > worst.off),
  );
}

function residualWords({ sizes }: Inference, display: LengthDisplay): string {
  const all = sizes.flatMap(({ label, worst: own }) =>
    own === undefined ? [] : [{ label, ...own }],
  );
  const worst = all.toSorted((a, b) => b.miss - b.off - (a.miss - a.off))[0];
  if (worst === undefined || worst.miss <= worst.off)
    return wrappedParagraph(
      `The ${sizes.some(({ leftOut }) => leftOut.length > 0) ? 'other ' : ''}cells agree with one ` +
        'another: no body of the rules misses any of them by more than ' +
        `${showLength(Math.max(RULE_RIGHT, ...all.map(({ off }) => off)), { ...display, fractions: true })}.`,
    );
  return wrappedParagraph(
    `The cells contradict one another, and no few of them are to blame, so a mean of all is shown: ` +
      `${worst.cell} of size ${worst.label} misses the best fit by ` +
      `${showLength(worst.miss, display)}. Its rule or its number is not what this style gives.`,
  );
}

function unknownWords({ measurements, unseen, sizes, atStandIn }: Inference): string {
  const open = measurements.filter((_, k) =>
    sizes.some(({ increments }) => increments[k] === undefined),
  );
  const shrinks = ['waist_to_hip', 'skirt_length'].filter((name) => {
    const k = measurements.indexOf(name);
    const girth = measurements.indexOf('hip_girth');
    const along = sizes.map(({ increments }) => (increments[k] ?? 0) * (increments[girth] ?? 0));
    return along.some((product) => product < 0) && along.every((product) => product <= 0);
  });
  return present([
    'What the sheet cannot tell',
    '- the girths themselves, ease and darts: rules hold differences only',
    unseen.length > 0 && `- ${unseen.join(', ')}: no cell depends on it`,
    open.length > 0 &&
      `- ${open.join(', ')} where a ? stands: the cells do not tell ` +
        (open.length === 1 ? 'it from the others' : 'them apart'),
    atStandIn &&
      '- the exact figures: some rules of this style depend on the body, a stand-in was taken',
    shrinks.length > 0 &&
      `- whether ${shrinks.join(', ')} shrinks as the hip grows, or y runs up: a line ` +
        '"# y: up" in the sheet tells',
  ])
    .map((line, i) => wrappedParagraph(line, i === 0 ? 0 : 2))
    .join('');
}

function tablesReport({ measurements, sizes }: Inference, display: LengthDisplay): string {
  const at = (name: string, i: number): number =>
    sizes[i]?.increments[measurements.indexOf(name)] ?? NaN;
  const steps = sizes.slice(1).map((_, i): GirthStep => ({
    waist: at('waist_girth', i + 1) - at('waist_girth', i),
    hip: at('hip_girth', i + 1) - at('hip_girth', i),
  }));
  if (steps.some(({ waist, hip }) => !Number.isFinite(waist + hip)))
    return wrappedParagraph('Without the steps of both waist and hip no table can be compared.');
  const show = (mm: number): string => showNumber(mm, display);
  const matches = nearestTables(steps).slice(0, MOST);
  const rows = matches.map(({ table, from, to, first, count, mean, largest }) => [
    table.id,
    `${from} to ${to}`,
    `${sizes[first]?.label ?? ''} to ${sizes[first + count]?.label ?? ''}`,
    show(mean),
    show(largest),
  ]);
  const header = ['table', 'its sizes', "sheet's sizes", 'mean off', 'at most'];
  return (
    'Published tables whose steps of waist and hip come nearest\n' +
    textTable([header, ...rows], 3) +
    matches
      .map(({ table }) => wrappedParagraph(`  ${table.id}: ${tableSource(table)}`, 4))
      .join('') +
    wrappedParagraph(
      'Tables are slid along the sheet, since its girths are not known; size labels mean nothing ' +
        'here. Standards are voluntary: a difference is something to know and not a mistake.',
    )
  );
}
