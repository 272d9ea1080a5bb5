/** What `mark` tells: the score, the slips with their cells, and what would become of the skirt. */
import type { Run } from '../study/mark/explanations';
import type { FoundSlip } from '../study/mark/fewest-slips';
import type { MarkedCell } from '../study/mark/marked-cells';
import type { Marking } from '../study/mark/mark-sheet';
import { rightValues } from '../study/mark/series';
import type { LengthDisplay } from '../units';
import { UNIT_WORDS, showLength, showNumber } from '../units';
import { garmentReport } from './garment-report';
import { columnsTable, paragraph } from './text-table';

/** The report in lines of at most 80 columns, lengths as `display` says. */
export function markReport(marking: Marking, display: LengthDisplay): string {
  return [
    heading(marking, display),
    score(marking),
    ...slips(marking, display),
    ...missing(marking),
    garmentReport(marking.worn, display),
  ].join('\n');
}

function heading(marking: Marking, display: LengthDisplay): string {
  const { sheet, result, convention, tolerance, pieces } = marking;
  const { zeros, up, mirrored } = convention;
  const zeroWords = pieces.map((piece) => {
    const zero = zeros.get(piece)?.join(' and ');
    const words = zero?.includes(' and ') ? `halfway between ${zero}` : zero;
    return `${piece} ${words ?? result.range.stackPoint}`;
  });
  return (
    paragraph(
      `${sheet.file} against ${result.chart.file}: style ${result.style.name}, base ` +
        `${result.range.base}, ${UNIT_WORDS[display.unit]}, tolerance ` +
        showLength(tolerance, { ...display, fractions: true }),
    ) +
    paragraph(
      `Read with the zero at ${zeroWords.join(', ')}; x from the center to the side` +
        `${mirrored.size === 0 ? '' : ` (mirrored: ${[...mirrored].join(', ')})`}, ` +
        `y ${up ? 'up' : 'down'}. The zero and the direction of the axes are yours to choose.`,
    )
  );
}

function score({ cells }: Marking): string {
  const count = (verdict: MarkedCell['verdict']): number =>
    cells.filter((cell) => cell.verdict === verdict).length;
  const right = count('right');
  const percent = cells.length === 0 ? 0 : Math.floor((100 * right) / cells.length);
  return paragraph(
    `Score: ${percent} of 100. Of ${cells.length} cells ${right} are right, ` +
      `${count('wrong')} wrong, ${count('missing')} missing.`,
  );
}

function slips(marking: Marking, display: LengthDisplay): readonly string[] {
  const { found, unexplained } = marking.diagnosis;
  if (found.length === 0 && unexplained.length === 0) return [];
  const wrong = marking.cells.filter(({ verdict }) => verdict === 'wrong').length;
  const left = unexplained.reduce((sum, { sizes }) => sum + sizes.length, 0);
  const verb = found.length === 1 ? 'slip explains' : 'slips explain';
  return [
    paragraph(`Likely slips: ${found.length} ${verb} ${wrong - left} of ${wrong} wrong cells.`),
    ...found.map((slip, i) => slipText(marking, slip, i + 1, display)),
    ...(unexplained.length === 0
      ? []
      : [
          paragraph('No slip that is looked for gives these numbers; work them out anew:') +
            unexplained.map((run) => runText(marking, run, display)).join(''),
        ]),
  ];
}

/** Series shown in full for one slip; the others are only named. */
const SHOWN = 4;

function slipText(
  marking: Marking,
  { slip, runs, alike }: FoundSlip,
  number: number,
  display: LengthDisplay,
): string {
  const more = runs.slice(SHOWN).map(runName);
  const { words, advice } = slip;
  return (
    paragraph(`${number}. ${words}`, 3) +
    paragraph(`   ${advice}`, 3) +
    alike.map((other) => paragraph(`   or, with the same numbers: ${other.words}`, 3)).join('') +
    runs
      .slice(0, SHOWN)
      .map((run) => runText(marking, run, display))
      .join('') +
    (more.length === 0 ? '' : paragraph(`   likewise ${more.join(', ')}`, 3))
  );
}

function runName({ series }: Run): string {
  const { piece, point, form, axis } = series;
  return `${piece}.${point} ${form === 'step' ? 'step_' : ''}d${axis}`;
}

function runText({ key, result }: Marking, run: Run, display: LengthDisplay): string {
  const { series, sizes } = run;
  const right = rightValues(key, series);
  const p = result.range.plans.findIndex(({ name }) => name === series.piece);
  const k = result.range.plans[p]?.index.get(series.point) ?? -1;
  const rule = result.range.ruleFormulas[p]?.[k]?.[series.axis].text ?? '';
  const numbers = (values: readonly (number | undefined)[]): readonly string[] =>
    sizes.map((i) => showNumber(values[i] ?? NaN, display));
  return (
    paragraph(`   ${runName(run)}, by the rule ${rule}`, 3) +
    columnsTable(
      [
        ['size', ...sizes.map((i) => key.sizes[i] ?? '')],
        ['yours', ...numbers(series.given)],
        ['right', ...numbers(right)],
      ],
      5,
    )
  );
}

function missing({ cells }: Marking): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const { piece, point, axis, form, size, verdict } of cells) {
    if (verdict !== 'missing') continue;
    const name = `${piece}.${point} ${form === 'step' ? 'step_' : ''}d${axis}`;
    groups.set(name, [...(groups.get(name) ?? []), size]);
  }
  const bySizes = new Map<string, string[]>();
  for (const [name, sizes] of groups) {
    const key = sizes.join(', ');
    bySizes.set(key, [...(bySizes.get(key) ?? []), name]);
  }
  if (groups.size === 0) return [];
  const lines = [...bySizes].map(([sizes, names]) =>
    paragraph(`  in ${sizes}: ${names.join(', ')}`, 4),
  );
  return [`Missing\n${lines.join('')}`];
}
