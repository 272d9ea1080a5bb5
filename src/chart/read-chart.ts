/** Reads a chart of body measurements from CSV text. */
import { InputError } from '../errors';
import { checkDoubtfulCells } from './doubtful-cells';
import { checkGirthUnit } from './girth-unit';
import type { ChartTable } from './layout';
import { findLayout } from './layout';
import { measurementRow, nameLines } from './measurement-lines';
import { needRows, needValues } from './need-values';
import type { SheetComment } from '../table/sheet';
import { readSheet } from '../table/sheet';
import type { SizeChart } from './size-chart';
import { statedUnit } from './stated-unit';
import { readSizeLabels } from './size-labels';
import { checkRange, smallestFirst } from './size-order';
import { refuseCounting } from '../table/statements';
import { isBlank, tidyText } from '../table/tidy-text';
import { statementsIn } from '../table/statement-words';
import { checkTitle, seemsTitle } from '../table/title';
import { recognizeMeasurement } from './vocabulary';
import { takeUnitColumn } from './unit-column';
import { takeUnitLines, takeUnits } from './unit-lines';

/** The rows without which no skirt can be drafted; every size must have them. */
export const NEEDED: readonly string[] = ['waist_girth', 'hip_girth'];

/** Cells of a chart: a thousand sizes with a hundred measurements. The engine's own figure. */
const MOST_CELLS = 100_000;

/**
 * Reads a chart in either layout, whatever its delimiter, line ends, title lines and blank rows.
 * `file` names the chart in messages. Throws an InputError with the place of the trouble for
 * everything that would make a girth, a size or the unit doubtful; rows that are not needed are
 * read as far as they can be.
 */
export function readChart(text: string, file: string): SizeChart {
  const { statements, rest } = takeUnitLines(
    readSheet(text, file, namesMeasurement, MOST_CELLS),
    file,
  );
  if (rest.records.length === 0) {
    throw new InputError('chart-empty', {
      what: 'the chart is empty',
      allowed: 'a header line with the sizes, and rows waist_girth and hip_girth',
      got: '',
      place: { file },
    });
  }
  const { table, statements: inColumn } = takeUnitColumn(findLayout(rest.records, file), file);
  const titles = takeUnits(titleLines(table), file);
  const lines = nameLines(table, file);
  const needed = lines.filter(({ name }) => NEEDED.includes(name));
  const sizes = readSizeLabels(table, needed, file);
  const unit = statedUnit([...statements, ...titles.statements, ...inColumn], table, lines, file);

  const comments = [...rest.comments, ...titles.rest];
  refuseCounting({ file, comments }, unit);

  const asTyped: SizeChart = {
    file,
    comments: commentTexts(withTitle(rest.comments, titles.rest, table), file),
    unit,
    sizes: sizes.map(({ name }) => name),
    rows: lines.map((line) => measurementRow(line, sizes, unit, file)),
    layout: table.layout,
    largestFirst: false,
  };
  needRows(asTyped, NEEDED);
  for (const name of NEEDED) needValues(asTyped, name);
  checkGirthUnit(asTyped);
  checkDoubtfulCells(asTyped);
  const chart = smallestFirst(asTyped);
  checkRange(chart);
  return chart;
}

/** A line of a chart has a label and a size or more. */
export function namesMeasurement(cells: readonly string[]): boolean {
  return cells.length >= 2 && cells.some((cell) => recognizeMeasurement(cell) !== undefined);
}

/** The records above the header as lines of words. */
export function titleLines({ titles }: ChartTable): readonly SheetComment[] {
  return titles.map(({ row, cells }) => ({
    row,
    text: cells
      .map(tidyText)
      .filter((cell) => cell !== '')
      .join(', '),
  }));
}

/**
 * Comments and title lines, the first of them marked as the title where it stands alone above the
 * table and reads like one.
 */
function withTitle(
  comments: readonly SheetComment[],
  titles: readonly SheetComment[],
  { titles: records, corner }: ChartTable,
): readonly SheetComment[] {
  const all = [...comments, ...titles].toSorted((a, b) => a.row - b.row);
  const [first, ...others] = all;
  if (first === undefined || first.row >= corner.row) return all;
  if (all.some(({ text }) => statementsIn(text).some(({ name }) => name === 'title'))) return all;
  const record = records.find(({ row }) => row === first.row);
  const isLone = (record?.cells.filter((cell) => !isBlank(cell)) ?? ['']).length === 1;
  if (!isLone || !seemsTitle(first.text, record === undefined)) return all;
  return [{ ...first, text: `title: ${first.text}` }, ...others];
}

/** The lines as texts. Throws what `checkTitle` throws. */
function commentTexts(comments: readonly SheetComment[], file: string): string[] {
  for (const { row, text } of comments)
    for (const stated of statementsIn(text))
      if (stated.name === 'title') checkTitle(stated.text, { file, row });
  return comments.map(({ text }) => text);
}
