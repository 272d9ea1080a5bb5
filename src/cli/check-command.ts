/** `skirtgrade check`: a chart's increments beside those of published tables. */
import { chartNotes } from '../check/chart-notes';
import { readChart } from '../chart/read-chart';
import type { SizeChart } from '../chart/size-chart';
import { checkChart } from '../check/chart';
import { compareSteps } from '../check/chart-compare';
import { bySeverity } from '../check/finding';
import { defaultTables } from '../standards/default-tables';
import type { PublishedTable } from '../standards/published-table';
import { tableSource } from '../standards/published-table';
import { publishedTable } from '../standards/published-tables';
import type { LengthDisplay, LengthUnit } from '../units';
import { UNIT_WORDS, showNumber } from '../units';
import { findingsReport } from './findings-report';
import type { ExitCode, Io } from './io';
import { paragraph, textTable } from './text-table';

/** The options of `check` as commander reads them. */
export interface CheckCommandOptions {
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
  const chart = readChart(io.readText(file), file);
  const display = { unit: options.unit ?? chart.unit, fractions: options.fractions ?? false };
  const against = options.against.length > 0 ? options.against : defaultTables(chart);
  const tables = against.map(publishedTable);
  // The steps stand in the tables above already, so only what is not there is told in words.
  const findings = bySeverity([...chartNotes(chart), ...checkChart(chart, display, against)]);
  const words = findings.filter(
    ({ check, severity }) => check !== 'step-against-standard' || severity !== 'note',
  );
  const everything = { fail: Infinity, warning: Infinity, note: Infinity, ok: 0 };
  io.out(
    [
      paragraph(`${file}: ${chart.sizes.length} sizes, ${UNIT_WORDS[display.unit]}`),
      ...tables.map((table) => comparison(chart, table, display)),
      findingsReport(words, io.color, '', everything),
      paragraph(
        'Standards are voluntary, so a difference is something to know and not a mistake; ' +
          'body measurements are not garment measurements.',
      ),
    ].join('\n'),
  );
  return findings.some(({ severity }) => severity === 'fail') ? 1 : 0;
}

/** One row a step: the chart's growth, the table's own step there, and hip for the same waist. */
function comparison(chart: SizeChart, table: PublishedTable, display: LengthDisplay): string {
  const show = (mm: number | undefined): string =>
    mm === undefined ? '-' : showNumber(mm, display);
  const rows = compareSteps(chart, table).map(({ chart: step, table: given }) => [
    `${step.from.size} to ${step.to.size}`,
    show(step.waist),
    show(step.hip),
    given === undefined ? 'outside' : `${given.from} to ${given.to}`,
    show(given?.waist),
    show(given?.hip),
    show(given?.hipGrowth),
    show(given?.difference),
    given === undefined ? '' : given.agrees ? 'agrees' : 'differs',
  ]);
  const header = ['step', 'waist', 'hip', "table's", 'waist', 'hip', 'hip due', 'differs', ''];
  return `${paragraph(`Against ${table.id}: ${tableSource(table)}`, 2)}${textTable([header, ...rows])}`;
}
