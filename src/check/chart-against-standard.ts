/** Compares what a chart's waist and hip grow with a published table. Never fails a chart. */
import type { SizeChart } from '../chart/size-chart';
import { hipAtWaist, waistRange } from '../standards/hip-curve';
import type { PublishedTable } from '../standards/published-table';
import { tableSource } from '../standards/published-table';
import { INCREMENT_AGREES } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { ChartBody, ChartStep } from './chart-bodies';
import { chartBodies, drop } from './chart-bodies';
import type { TableStep } from './chart-compare';
import { compareSteps } from './chart-compare';
import type { Finding } from './finding';

/**
 * A note for every step that agrees with the table, a warning for every step that does not (a note
 * too where the table is a survey: its classes are means over many bodies, not sizes), one note for each stretch of sizes beyond the table, and the drop at both ends of what the table
 * covers. Published tables disagree with one another, so nothing here is ever a failure.
 */
export function checkAgainstStandard(
  chart: SizeChart,
  table: PublishedTable,
  display: LengthDisplay,
): Finding[] {
  const steps: Finding[] = [];
  let beyond: ChartStep[] = [];
  for (const { chart: step, table: given } of compareSteps(chart, table)) {
    if (given === undefined) {
      beyond.push(step);
      continue;
    }
    steps.push(...beyondFinding(beyond, table, display), stepFinding(step, given, table, display));
    beyond = [];
  }
  return [
    ...steps,
    ...beyondFinding(beyond, table, display),
    ...dropFindings(chart, table, display),
  ];
}

function stepFinding(
  step: ChartStep,
  given: TableStep,
  table: PublishedTable,
  display: LengthDisplay,
): Finding {
  const { from, to, waist, hip } = step;
  const show = (mm: number) => showLength(mm, display);
  return {
    severity: given.agrees || table.kind === 'survey' ? 'note' : 'warning',
    check: 'step-against-standard',
    size: `${from.size}-${to.size}`,
    piece: '',
    subject: table.id,
    quantity: 'length',
    measured: hip,
    expected: given.hipGrowth,
    tolerance: INCREMENT_AGREES,
    source: tableSource(table),
    message:
      `from ${from.size} to ${to.size} the waist grows ${show(waist)} and the hip ${show(hip)}; ` +
      `the table's own step there, ${given.from} to ${given.to}, is ${show(given.waist)} and ` +
      `${show(given.hip)}, and it gives ${show(given.hipGrowth)} of hip for the same waist growth: ` +
      `a difference of ${show(given.difference)}, ` +
      `${given.agrees ? 'within' : 'beyond'} ${show(INCREMENT_AGREES)}`,
  };
}

/** One note for neighboring steps that the table does not cover; none where there are none. */
function beyondFinding(
  steps: readonly ChartStep[],
  table: PublishedTable,
  display: LengthDisplay,
): Finding[] {
  const from = steps[0]?.from;
  const to = steps.at(-1)?.to;
  const range = waistRange(table);
  if (from === undefined || to === undefined || range === undefined) return [];
  const show = (mm: number) => showLength(mm, display);
  return [
    {
      severity: 'note',
      check: 'beyond-standard',
      size: `${from.size}-${to.size}`,
      piece: '',
      subject: table.id,
      quantity: 'length',
      source: tableSource(table),
      message:
        `from ${from.size} to ${to.size} the waist, ${show(from.waist)} to ${show(to.waist)}, ` +
        `leaves the table's range of ${show(range.least)} to ${show(range.greatest)}; ` +
        `nothing is compared there`,
    },
  ];
}

function dropFindings(chart: SizeChart, table: PublishedTable, display: LengthDisplay): Finding[] {
  const covered = chartBodies(chart).filter((body) => hipAtWaist(table, body.waist) !== undefined);
  const ends = [...covered.slice(0, 1), ...covered.slice(1).slice(-1)];
  return ends.flatMap((body) => dropFinding(body, table, display));
}

function dropFinding(body: ChartBody, table: PublishedTable, display: LengthDisplay): Finding[] {
  const tableHip = hipAtWaist(table, body.waist);
  if (tableHip === undefined) return [];
  const measured = drop(body);
  const expected = tableHip - body.waist;
  const show = (mm: number) => showLength(mm, display);
  return [
    {
      severity: 'note',
      check: 'drop-against-standard',
      size: body.size,
      piece: '',
      subject: table.id,
      quantity: 'length',
      measured,
      expected,
      source: tableSource(table),
      message:
        `at ${body.size} the drop (hip minus waist) is ${show(measured)}; the table gives ` +
        `${show(expected)} at that waist (difference ${show(measured - expected)})`,
    },
  ];
}
