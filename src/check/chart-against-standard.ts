/** Compares what a chart's waist and hip grow with a published table. Never fails a chart. */
import { present } from '../lists/present';
import type { SizeChart } from '../chart/size-chart';
import { hipAtWaist, waistRange } from '../standards/hip-curve';
import type { PublishedTable } from '../standards/published-table';
import { tableSource } from '../standards/published-table';
import type { LengthDisplay } from '../units';
import { showLength, trimmed } from '../units';
import type { ChartBody, ChartStep } from './chart-bodies';
import { chartBodies, drop } from './chart-bodies';
import type { RangeComparison, TableStep } from './chart-compare';
import { compareRange, compareSteps } from './chart-compare';
import type { ComparedTable } from './compared-tables';
import type { Finding } from './finding';

/**
 * A note that names the table as the chart's own, or says why it is compared; a finding for every step, for
 * the range total and for the drop at both ends of what the table covers, ok where they agree and else a note;
 * and a note for each stretch of sizes beyond the table. The total is a warning where it or a part of it would
 * change the label of a size and the table may warn. Published tables disagree with one another, so nothing
 * here is a failure.
 */
export function checkAgainstStandard(
  chart: SizeChart,
  compared: ComparedTable,
  display: LengthDisplay,
): Finding[] {
  const { table } = compared;
  const steps: (Finding | undefined)[] = [];
  let beyond: ChartStep[] = [];
  for (const { chart: step, table: given } of compareSteps(chart, table)) {
    if (given === undefined) {
      beyond.push(step);
      continue;
    }
    steps.push(beyondFinding(beyond, table, display), stepFinding(step, given, table, display));
    beyond = [];
  }
  const range = compareRange(chart, table);
  return present([
    choiceFinding(compared, display),
    ...steps,
    beyondFinding(beyond, table, display),
    rangeFinding(range, compared, display),
    ...dropFindings(chart, table, range?.tolerance, display),
  ]);
}

/** Why this table: it is the chart, or so much of the chart's waists is in it and so near it lies. */
function choiceFinding(compared: ComparedTable, display: LengthDisplay): Finding | undefined {
  const { table, coverage, distance, identical, rank } = compared;
  if (!identical && (rank === undefined || coverage === 0)) return undefined;
  return {
    ...note(table, identical ? 'same-as-standard' : 'nearest-standard', ''),
    measured: identical ? 0 : distance,
    message: identical
      ? sameWords(compared)
      : `${table.name} covers ${trimmed(100 * coverage, 0)} % of the chart's waist range; there ` +
        `the hips lie ${showLength(distance, display)} from its hips at the same waist, on average`,
  };
}

function sameWords({ table, shared }: ComparedTable): string {
  const [first, last] = [shared[0], shared.at(-1)];
  const sameNames = shared.every(({ size, inTable }) => size === inTable);
  return (
    `in the sizes they share your chart is ${table.name}, cell for cell: ` +
    `${first?.size} to ${last?.size}` +
    (sameNames ? '' : `, called ${first?.inTable} to ${last?.inTable} there`)
  );
}

/** What the findings about one table have in common. */
function note(table: PublishedTable, check: string, size: string) {
  return {
    severity: 'note' as const,
    check,
    size,
    piece: '',
    subject: table.id,
    quantity: 'length' as const,
    source: tableSource(table),
  };
}

function stepFinding(
  step: ChartStep,
  given: TableStep,
  table: PublishedTable,
  display: LengthDisplay,
): Finding {
  const { from, to, waist, hip } = step;
  const show = (mm: number) => showLength(mm, display);
  const own =
    given.spans === 1
      ? `the table's own step there, ${given.from} to ${given.to}, is ${show(given.waist)} and ` +
        show(given.hip)
      : `that spans ${trimmed(given.spans, 1)} steps of the table, whose ${given.from} to ` +
        `${given.to} is ${show(given.waist)} and ${show(given.hip)}`;
  return {
    ...note(table, 'step-against-standard', `${from.size}-${to.size}`),
    severity: given.agrees ? 'ok' : 'note',
    measured: hip,
    expected: given.hipGrowth,
    tolerance: given.tolerance,
    message:
      `from ${from.size} to ${to.size} the waist grows ${show(waist)} and the hip ${show(hip)}; ` +
      `${own}, and it gives ${show(given.hipGrowth)} of hip for the same waist growth: ` +
      `a difference of ${show(given.difference)}, ` +
      `${given.agrees ? 'within' : 'beyond'} ${show(given.tolerance)}`,
  };
}

/** The total over the sizes that the table covers; nothing where it covers fewer than two. */
function rangeFinding(
  range: RangeComparison | undefined,
  { table, warns }: ComparedTable,
  display: LengthDisplay,
): Finding | undefined {
  if (range === undefined) return undefined;
  const { from, to, waist, hip, hipGrowth, difference, swing, tolerance, agrees } = range;
  const show = (mm: number) => showLength(mm, display);
  const most =
    Math.abs(swing.difference) > Math.abs(difference) + tolerance / 100
      ? `, and most from ${swing.from.size} to ${swing.to.size}: ${show(swing.difference)}`
      : '';
  return {
    ...note(table, 'range-against-standard', `${from.size}-${to.size}`),
    severity: agrees ? 'ok' : warns ? 'warning' : 'note',
    measured: hip,
    expected: hipGrowth,
    tolerance,
    message:
      `from ${from.size} to ${to.size} the waist grows ${show(waist)} and the hip ${show(hip)}; ` +
      `the table gives ${show(hipGrowth)} of hip for the same waist: a difference of ` +
      `${show(difference)}${most}; half a hip step of the chart is ${show(tolerance)}, so ` +
      (agrees ? 'no size would change its label' : 'some sizes would change their label'),
  };
}

/** One note for neighboring steps that the table does not cover; none where there are none. */
function beyondFinding(
  steps: readonly ChartStep[],
  table: PublishedTable,
  display: LengthDisplay,
): Finding | undefined {
  const from = steps[0]?.from;
  const to = steps.at(-1)?.to;
  const range = waistRange(table);
  if (from === undefined || to === undefined || range === undefined) return undefined;
  const show = (mm: number) => showLength(mm, display);
  return {
    ...note(table, 'beyond-standard', `${from.size}-${to.size}`),
    message:
      `from ${from.size} to ${to.size} the waist, ${show(from.waist)} to ${show(to.waist)}, ` +
      `leaves the table's range of ${show(range.least)} to ${show(range.greatest)}; ` +
      `nothing is compared there`,
  };
}

/** `tolerance` is half a hip step of the chart; undefined where the table covers fewer than two sizes. */
function dropFindings(
  chart: SizeChart,
  table: PublishedTable,
  tolerance: number | undefined,
  display: LengthDisplay,
): Finding[] {
  const covered = chartBodies(chart).filter((body) => hipAtWaist(table, body.waist) !== undefined);
  const ends = [...covered.slice(0, 1), ...covered.slice(1).slice(-1)];
  return ends.flatMap((body) => dropFinding(body, table, tolerance, display) ?? []);
}

function dropFinding(
  body: ChartBody,
  table: PublishedTable,
  tolerance: number | undefined,
  display: LengthDisplay,
): Finding | undefined {
  const tableHip = hipAtWaist(table, body.waist);
  if (tableHip === undefined) return undefined;
  const measured = drop(body);
  const expected = tableHip - body.waist;
  const show = (mm: number) => showLength(mm, display);
  const agrees = tolerance !== undefined && Math.abs(measured - expected) <= tolerance;
  return {
    ...note(table, 'drop-against-standard', body.size),
    severity: agrees ? 'ok' : 'note',
    measured,
    expected,
    tolerance,
    message:
      `at ${body.size} the drop (hip minus waist) is ${show(measured)}; the table gives ` +
      `${show(expected)} at that waist (difference ${show(measured - expected)})` +
      (tolerance === undefined
        ? ''
        : `, ${agrees ? 'within' : 'beyond'} half a hip step of the chart, ${show(tolerance)}`),
  };
}
