/** Reads a chart of body measurements from CSV text. */
import { InputError } from '../errors';
import { checkDoubtfulCells } from './doubtful-cells';
import { checkGirthUnit } from './girth-unit';
import { splitLabel } from '../table/label';
import type { ChartTable } from './layout';
import { findLayout } from './layout';
import type { MeasurementLine } from './measurement-lines';
import { measurementRow, nameLines } from './measurement-lines';
import { needValues } from './need-values';
import type { SheetComment } from '../table/sheet';
import { readSheet } from '../table/sheet';
import type { SizeChart } from './size-chart';
import { readSizeLabels } from './size-labels';
import { checkRange, smallestFirst } from './size-order';
import { tidyText } from '../table/tidy-text';
import { unitNamed } from '../table/unit-name';
import { recognizeMeasurement } from './vocabulary';
import { takeUnitColumn } from './unit-column';
import type { UnitStatement } from './unit-statement';
import { agreedUnit, takeUnitStatements } from './unit-statement';

export { needValues } from './need-values';

/** The rows without which no skirt can be drafted; every size must have them. */
const NEEDED: readonly string[] = ['waist_girth', 'hip_girth'];

/** Cells of a chart: a thousand sizes with a hundred measurements. The engine's own figure. */
const MOST_CELLS = 100_000;

/**
 * Reads a chart in either layout, whatever its delimiter, line ends, title lines and blank rows.
 * `file` names the chart in messages. Throws an InputError with the place of the trouble for
 * everything that would make a girth, a size or the unit doubtful; rows that are not needed are
 * read as far as they can be.
 */
export function readChart(text: string, file: string): SizeChart {
  const { statements, rest } = takeUnitStatements(
    readSheet(text, file, namesMeasurement, MOST_CELLS),
  );
  if (rest.records.length === 0) {
    throw new InputError('chart-empty', {
      what: 'the chart is empty',
      allowed: 'a header line with the sizes, and rows waist_girth and hip_girth',
      got: '',
      place: { file },
    });
  }
  const { table, statements: inColumn } = takeUnitColumn(findLayout(rest.records, file));
  const lines = nameLines(table, file);
  const needed = lines.filter(({ name }) => NEEDED.includes(name));
  const sizes = readSizeLabels(table, needed, file);
  const unit = agreedUnit([...statements, ...inColumn, ...statedByLabels(table, lines)], file);

  const asTyped: SizeChart = {
    file,
    comments: commentTexts(rest.comments, table),
    unit,
    sizes: sizes.map(({ name }) => name),
    rows: lines.map((line) => measurementRow(line, sizes, unit, file)),
    layout: table.layout,
    largestFirst: false,
  };
  for (const name of NEEDED) needValues(asTyped, name);
  checkGirthUnit(asTyped);
  checkDoubtfulCells(asTyped);
  const chart = smallestFirst(asTyped);
  checkRange(chart);
  return chart;
}

/** A line of a chart has a label and two sizes or more. */
function namesMeasurement(cells: readonly string[]): boolean {
  return cells.length >= 3 && cells.some((cell) => recognizeMeasurement(cell) !== undefined);
}

/** Units behind the labels of known measurements, and in the corner, as in `measurement (cm)`. */
function statedByLabels(
  { corner }: ChartTable,
  lines: readonly MeasurementLine[],
): UnitStatement[] {
  const cornerUnit = splitLabel(corner.text).unit ?? unitNamed(corner.text);
  return [
    { unit: cornerUnit, label: corner },
    ...lines.filter(({ known }) => known).map(({ unit, label }) => ({ unit, label })),
  ].flatMap(({ unit, label: { row, column } }) =>
    unit === undefined ? [] : [{ text: unit, row, column }],
  );
}

/** Comments and title lines in the order of the file. */
function commentTexts(comments: readonly SheetComment[], { titles }: ChartTable): string[] {
  const fromTitles = titles.map(({ row, cells }) => ({
    row,
    text: cells
      .map(tidyText)
      .filter((cell) => cell !== '')
      .join(', '),
  }));
  return [...comments, ...fromTitles].sort((a, b) => a.row - b.row).map(({ text }) => text);
}
