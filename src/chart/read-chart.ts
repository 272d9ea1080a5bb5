/** Reads a chart of body measurements from CSV text. */
import { checkDoubtfulCells } from './doubtful-cells';
import { checkGirthUnit } from './girth-unit';
import type { ChartTable } from './layout';
import { findLayout } from './layout';
import type { MeasurementLine } from './measurement-lines';
import { measurementRow } from './measurement-lines';
import { readMeasurementTable } from './measurement-table';
import { needRows } from './need-values';
import type { MeasurementRow, SizeChart } from './size-chart';
import { setAside } from './set-aside';
import type { SizeLabel } from './size-labels';
import { readSizeLabels } from './size-labels';
import { checkRange, smallestFirst } from './size-order';
import { NEEDED } from './vocabulary';
import { readEach } from '../errors';
import type { SaidLine } from '../table/said-line';
import { allStated, saidLine } from '../table/said-line';
import { isBlank, tidyText } from '../table/tidy-text';
import type { LengthUnit } from '../units';
import { checkTitle, seemsTitle } from '../table/title';

/** Cells of a chart: a thousand sizes with a hundred measurements. The engine's own figure. */
const MOST_CELLS = 100_000;

/**
 * Reads a chart in either layout, whatever its delimiter, line ends, title lines and blank rows.
 * `file` names the chart in messages. Throws an InputError with the place of the trouble for
 * everything that would make a girth, a size or the unit doubtful; rows that are not needed are
 * read as far as they can be.
 */
export function readChart(text: string, file: string): SizeChart {
  const { table, lines, unit, comments } = readMeasurementTable(text, file, {
    layoutOf: findLayout,
    mostCells: MOST_CELLS,
    name: 'chart',
    header: 'a header line with the sizes, and rows waist_girth and hip_girth',
    setAside,
  });
  const needed = lines.filter(({ name }) => NEEDED.includes(name));
  const sizes = readSizeLabels(table, needed, file);
  const asTyped: SizeChart = {
    file,
    comments: withTitle(comments, table),
    unit,
    sizes: sizes.map(({ name }) => name),
    rows: readRows(lines, sizes, unit, file),
    layout: table.layout,
    largestFirst: false,
  };
  checkGirthUnit(asTyped);
  checkDoubtfulCells(asTyped);
  const chart = smallestFirst(asTyped);
  checkRange(chart);
  return chart;
}

/** The lines as rows. Rows that are needed and not there are told together with cells that cannot be read. */
function readRows(
  lines: readonly MeasurementLine[],
  sizes: readonly SizeLabel[],
  unit: LengthUnit,
  file: string,
): readonly MeasurementRow[] {
  const named = lines.map(({ name, known, label }) => ({
    name,
    known,
    label: tidyText(label.text),
  }));
  const steps = [
    (): readonly MeasurementRow[] => {
      needRows({ file, rows: named }, NEEDED);
      return [];
    },
    ...lines.map((line) => () => [measurementRow(line, sizes, unit, file)]),
  ];
  return readEach(steps, (step) => step()).flat();
}

/**
 * The lines, the first of them marked as the title where it stands alone above the table and reads like
 * one. Throws what `checkTitle` throws.
 */
function withTitle(
  lines: readonly SaidLine[],
  { beside: records, corner }: ChartTable,
): readonly SaidLine[] {
  const titles = allStated(lines, 'title');
  for (const { text, place } of titles) checkTitle(text, place);
  const [first, ...others] = lines;
  if (first === undefined || first.place.row >= corner.row || titles.length > 0) return lines;
  const record = records.find(({ row }) => row === first.place.row);
  const isLone = (record?.cells.filter((cell) => !isBlank(cell)) ?? ['']).length === 1;
  if (!isLone || !seemsTitle(first, record === undefined)) return lines;
  return [saidLine(`title: ${first.text}`, first.place), ...others];
}
