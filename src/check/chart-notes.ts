/** What a reader of a chart should know about how it was understood. */
import type { Finding } from './finding';
import { found } from './finding';
import { notReadFindings, unreadInChart } from './not-read';
import { labelRanks } from '../chart/label-order';
import type { MeasurementRow, SizeChart } from '../chart/size-chart';
import { nearMeasurement } from '../chart/vocabulary';

/** Words of rows that say how the skirt is to come out. */
const OF_SKIRT = /\b(?:skirt|hem|finished)\b|^(?:total |full )?length$/iu;

/**
 * Notes on a chart, none of them an error: `layout` and `size-order` where the file is not in the
 * canonical form, then for each row `read-as`, `incomplete-row` or `unknown-row` where they apply, and
 * `not-read` for what stands beside the table; a warning where an unknown row seems to mean one that
 * shapes the skirt.
 */
export function chartNotes(chart: SizeChart): readonly Finding[] {
  const notes: Finding[] = [];
  if (chart.layout === 'size-rows') {
    notes.push(note('layout', chart.file, 'The chart lists one size a row.'));
  }
  if (chart.largestFirst) {
    // Numbers that rise in the file tell another order than the girths, which larger-girths judges.
    const ranks = labelRanks(chart.sizes.toReversed());
    const message =
      (ranks?.at(-1) ?? 0) > (ranks?.[0] ?? 0)
        ? 'The waist and hip of the chart fall as its size names rise; it is used from small girths to large.'
        : 'The chart lists its sizes from large to small; they are used small to large.';
    notes.push(note('size-order', chart.file, message));
  }
  return [
    ...notes,
    ...chart.rows.flatMap((row) => rowNotes(chart, row)),
    ...notReadFindings(unreadInChart(chart)),
  ];
}

function rowNotes(chart: SizeChart, row: MeasurementRow): Finding[] {
  const { name, label } = row;
  if (!row.known) {
    const called = label === '' ? 'A row without a label' : `The row "${label}"`;
    const near = nearMeasurement(label);
    const meant =
      near === undefined || chart.rows.some((other) => other.name === near)
        ? ''
        : ` Did you mean ${near}?`;
    const found = note(
      'unknown-row',
      name,
      `${called} is no known measurement and is not used.${meant}`,
    );
    // A row that was to shape this skirt is no row to pass over.
    return [
      meant !== '' || OF_SKIRT.test(label.replaceAll('_', ' '))
        ? { ...found, severity: 'warning' }
        : found,
    ];
  }
  const notes: Finding[] = [];
  if (label !== name) notes.push(note('read-as', name, `The label "${label}" is read as ${name}.`));
  const missing = chart.sizes.filter((_, index) => row.values[index] === null);
  if (missing.length > 0) {
    const message = `${name} has no usable value for size ${missing.join(', ')}.`;
    notes.push(note('incomplete-row', name, message));
  }
  return notes;
}

function note(check: string, subject: string, message: string): Finding {
  return found({ severity: 'note', check, subject, message });
}
