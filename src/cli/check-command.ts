/** `skirtgrade check`: a chart's increments beside those of published tables. */
import { counted } from '../table/counted';
import { isInFractions } from '../chart/size-chart';
import { displayAsTyped } from '../table/typed-fractions';
import { chartNotes } from '../check/chart-notes';
import { readChart } from '../chart/read-chart';
import type { SizeChart } from '../chart/size-chart';
import { checkChart } from '../check/chart';
import { compareRange, compareSteps } from '../check/chart-compare';
import type { ComparedTable } from '../check/compared-tables';
import { comparedTables } from '../check/compared-tables';
import type { Finding } from '../check/finding';
import { bySeverity } from '../check/finding';
import { tableSource } from '../standards/published-table';
import { SAME_STEP } from '../tolerance';
import type { LengthDisplay, LengthUnit } from '../units';
import { UNIT_WORDS, showLength, showNumber, trimmed } from '../units';
import type { Verdict } from '../verdict/verdict';
import { verdictOf } from '../verdict/verdict';
import { CHART_READY, verdictLine } from '../verdict/words';
import type { ExitCode, Io } from './io';
import type { Telling } from './json-document';
import { tell } from './json-document';
import { findingFacts, verdictFacts } from './json-facts';
import { notReadLine } from './not-read-line';
import { readNamed } from './read-named';
import { wrappedParagraph, textTable } from './text-table';
import { findingsInWords, verdictReport } from './verdict-report';

/** The options of `check` as commander reads them. */
export interface CheckCommandOptions extends Telling {
  /** Ids of published tables; a choice that fits the chart if empty. */
  readonly against: readonly string[];
  readonly unit?: LengthUnit;
  readonly fractions?: boolean;
}

/**
 * Prints the comparison and its findings. Gives 0, or 1 where a check failed; throws InputError for
 * a chart or a table that cannot be used.
 */
export function checkCommand(file: string, options: CheckCommandOptions, io: Io): ExitCode {
  const named = readNamed(io, file);
  const chart = readChart(named.text, named.file);
  const display = displayAsTyped(options, chart.unit, isInFractions(chart));
  const against = options.against.length > 0 ? options.against : undefined;
  const findings = bySeverity([
    ...chartNotes(chart).map(asked),
    ...checkChart(chart, display, against),
  ]);
  const ready = chart.sizes.length > 1 ? CHART_READY : 'Can be drafted';
  const verdict = verdictOf(findings, chart.sizes, display);
  const told = { chart, findings, verdict, ready, display, against };
  return tell(io, 'check', options, {
    exitCode: verdict.kind === 'mend' ? 1 : 0,
    words: () => checkReport(told, options, io.color),
    brief: () => wrappedParagraph(verdictLine(verdict, ready)),
    facts: () => checkFacts(told),
  });
}

/** No style is known here, so a cell that is left blank may be one that the style cannot do without. */
function asked(finding: Finding): Finding {
  return finding.check === 'incomplete-row' ? { ...finding, severity: 'warning' } : finding;
}

/** A chart and what the checks say of it. */
interface CheckedChart {
  readonly chart: SizeChart;
  readonly findings: readonly Finding[];
  readonly verdict: Verdict;
  /** What may be done where nothing is left to decide. */
  readonly ready: string;
  readonly display: LengthDisplay;
  /** Tables that were asked for. */
  readonly against: readonly string[] | undefined;
}

function checkReport(checked: CheckedChart, telling: Telling, color: boolean): string {
  const { chart, findings, verdict, ready, display, against } = checked;
  const isGraded = chart.sizes.length > 1;
  // The steps stand in the tables already, so only what is not there is told in words.
  const words = findings.filter(
    ({ check }) => check !== 'step-against-standard' && !isChoice(check),
  );
  const where = telling.verbose === true ? 'told below' : 'which --verbose tells';
  return [
    wrappedParagraph(
      `${chart.file}: ${counted(chart.sizes.length, 'size')}, ${UNIT_WORDS[display.unit]}`,
    ),
    verdictReport(verdict, color, where, ready),
    ...notReadLine(findings, 'which --verbose tells'),
    ...(isGraded
      ? comparisons(checked, telling.verbose === true || against !== undefined)
      : [wrappedParagraph('One size has no steps, so there is nothing to compare.')]),
    ...findingsInWords(words, telling, color),
    explanation(display, isGraded),
  ].join('\n');
}

/** Every table that is compared, or the nearest alone and the names of the others. */
function comparisons(
  { chart, findings, display, against }: CheckedChart,
  isEvery: boolean,
): readonly string[] {
  const tables = comparedTables(chart, against);
  const told = isEvery ? tables : tables.slice(0, 1);
  const others = tables.slice(told.length).map(({ table }) => table.id);
  const also = `Compared besides: ${others.join(', ')} (--verbose, or --against one).`;
  return [
    ...told.map((table) => comparison(chart, table, findings, display)),
    ...(others.length === 0 ? [] : [wrappedParagraph(also)]),
  ];
}

/** The document of a check: findings, and each step of the chart beside that of each table. */
function checkFacts({ chart, findings, verdict, ready, display, against }: CheckedChart): object {
  const tables = chart.sizes.length > 1 ? comparedTables(chart, against) : [];
  return {
    chart: chart.file,
    sizes: chart.sizes,
    unit: display.unit,
    verdict: verdictFacts(verdict, ready),
    against: tables.map(({ table }) => ({
      table: table.id,
      source: tableSource(table),
      steps: compareSteps(chart, table).map(({ chart: step, table: given }) => ({
        from: step.from.size,
        to: step.to.size,
        waist: step.waist,
        hip: step.hip,
        hip_due: given?.hipGrowth,
        agrees: given?.agrees,
      })),
    })),
    findings: findingFacts(findings, display),
  };
}

/** When a step or the total of a chart agrees with that of a table, where it has any, and what a table is. */
function explanation(display: LengthDisplay, isGraded: boolean): string {
  return wrappedParagraph(
    (isGraded
      ? 'A hip step agrees within a quarter of the hip due, ' +
        `${showLength(SAME_STEP, { ...display, fractions: true })} at least; ` +
        'the total within half a hip step of the chart. '
      : '') +
      'Standards are voluntary: a difference is something to know, and not a mistake. They are of bodies, ' +
      'not of garments.',
  );
}

/**
 * One row a step: the chart's growth, the table's own step there, and hip for the same waist; then
 * one for all that the table covers. Where a step spans several of the table's, their number stands
 * in brackets.
 */
function comparison(
  chart: SizeChart,
  { table }: ComparedTable,
  findings: readonly Finding[],
  display: LengthDisplay,
): string {
  const reason = findings.find(({ check, subject }) => isChoice(check) && subject === table.id);
  const show = (mm: number | undefined): string =>
    mm === undefined ? '-' : showNumber(mm, display);
  const compared = compareSteps(chart, table);
  const rows = compared.map(({ chart: step, table: given }) => [
    `${step.from.size} to ${step.to.size}`,
    show(step.waist),
    show(step.hip),
    given === undefined
      ? 'outside'
      : `${given.from} to ${given.to}${given.spans > 1 ? ` (${trimmed(given.spans, 1)})` : ''}`,
    show(given?.waist),
    show(given?.hip),
    show(given?.hipGrowth),
    show(given?.difference),
    given === undefined ? '' : given.agrees ? 'agrees' : 'differs',
  ]);
  const range = compareRange(chart, table);
  const total =
    range === undefined
      ? []
      : [
          [
            `${range.from.size} to ${range.to.size}`,
            show(range.waist),
            show(range.hip),
            'in all',
            '',
            '',
            show(range.hipGrowth),
            show(range.difference),
            range.agrees ? 'agrees' : 'differs',
          ],
        ];
  const header = ['step', 'waist', 'hip', "table's", 'waist', 'hip', 'hip due', 'differs', ''];
  return (
    wrappedParagraph(`Against ${table.id}: ${tableSource(table)}`, 2) +
    (reason === undefined ? '' : wrappedParagraph(`  ${sentence(reason.message)}`, 2)) +
    textTable([header, ...rows, ...total]) +
    (compared.some(({ table: given }) => (given?.spans ?? 0) > 1)
      ? wrappedParagraph(
          "  In brackets: how many of the table's steps there one step of the chart takes in waist.",
          2,
        )
      : '')
  );
}

/** The findings that say why a table is compared; they stand at its head. */
function isChoice(check: string): boolean {
  return check === 'same-as-standard' || check === 'nearest-standard';
}

function sentence(message: string): string {
  return `${message.charAt(0).toUpperCase()}${message.slice(1)}.`;
}
