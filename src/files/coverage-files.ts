/** What is written of a coverage: its numbers, its picture, and a range that was proposed. */
import { present } from '../lists/present';
import { counted } from '../table/counted';
import { writeChart } from '../chart/write-chart';
import { saidLine } from '../table/said-line';
import type { MeasurementRow, SizeChart } from '../chart/size-chart';
import type { ChartCoverage, CoveredRange } from '../coverage/cover-chart';
import { LEFT_OUT } from '../bodies/fit';
import { coveragePicture } from '../coverage/picture';
import { sourceNotes } from '../coverage/words';
import { svg } from '../render/svg';
import { writtenCsv } from '../table/written-csv';
import type { LengthDisplay } from '../units';
import { tableLength, trimmed } from '../units';
import type { ResultFile } from './result-file';

/** Published tables that are drawn. */
const DRAWN_TABLES = 5;

/** `coverage.csv`, `coverage.svg`, and `suggested-chart.csv` where a range was asked for. */
export function coverageFiles(
  result: ChartCoverage,
  display: LengthDisplay,
): readonly ResultFile[] {
  const { suggested } = result;
  return present([
    { name: 'coverage.csv', text: coverageTable(result, display) },
    { name: 'coverage.svg', text: coverageDrawing(result, display) },
    suggested && { name: 'suggested-chart.csv', text: suggestedChart(result, suggested) },
  ]);
}

/** The cloud of bodies with the sizes and some published tables over it, as SVG. */
export function coverageDrawing(result: ChartCoverage, display: LengthDisplay): string {
  const { range, crowd, normal, published, suggested } = result;
  return svg(
    coveragePicture({
      title: `Whom the sizes of ${range.name.replace(/^.*[\\/]/u, '')} fit`,
      notes: sourceNotes(result),
      ...{ crowd, normal, range, suggested, display },
      tables: published.slice(0, DRAWN_TABLES),
    }),
  );
}

/** `range,size,waist_cm,hip_cm,share_percent`: each size, then all, then those left out by why. */
function coverageTable(
  { range, published, suggested }: ChartCoverage,
  display: LengthDisplay,
): string {
  const all = [range, ...(suggested === undefined ? [] : [suggested]), ...published];
  const rows = all.flatMap(({ name, sizes, coverage }) => [
    ...sizes.map(({ label, waist, hip }, i) => [
      ...[name, label, tableLength(waist, display), tableLength(hip, display)],
      percent(coverage.bySize[i] ?? 0),
    ]),
    [name, 'served', '', '', percent(coverage.served)],
    ...LEFT_OUT.map((why) => [name, why, '', '', percent(coverage.leftOut[why])]),
  ]);
  const lengths = ['waist', 'hip'].map((girth) => `${girth}_${display.unit}`);
  return writtenCsv([['range', 'size', ...lengths, 'share_percent'], ...rows]);
}

function percent(share: number): string {
  return trimmed(100 * share, 3);
}

/** A range that was proposed as a chart that is graded as it stands. */
export function suggestedChart(
  { chart, style }: ChartCoverage,
  { sizes, coverage }: CoveredRange,
): string {
  const row = (name: string, values: readonly number[]): MeasurementRow => ({
    ...{ name, label: name, known: true, values },
    cells: values.map(() => ''),
    places: [],
  });
  const file = 'suggested-chart.csv';
  const proposed: SizeChart = {
    file,
    comments: [
      `title: ${counted(sizes.length, 'size')} proposed`,
      `not read: serves ${trimmed(100 * coverage.served, 1)} percent of its population in ${style}`,
    ].map((text, i) => saidLine(text, { file, row: i + 1 })),
    unit: chart.unit,
    sizes: sizes.map(({ label }) => label),
    rows: [
      row(
        'waist_girth',
        sizes.map(({ waist }) => waist),
      ),
      row(
        'hip_girth',
        sizes.map(({ hip }) => hip),
      ),
    ],
    layout: 'measurement-rows',
    largestFirst: false,
  };
  return writeChart(proposed);
}
