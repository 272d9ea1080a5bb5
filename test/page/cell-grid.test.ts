/** The grid of a chart keeps every cell and every place of the file that it was read from. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { namesMeasurement } from '../../src/chart/measurement-table';
import { readChart } from '../../src/chart/read-chart';
import type { SizeChart } from '../../src/chart/size-chart';
import type { CellGrid } from '../../src/page/cell-grid';
import {
  asWritten,
  gridOf,
  gridText,
  pastedCells,
  withCells,
  withColumn,
  withRow,
  withoutColumn,
  withoutRow,
} from '../../src/page/cell-grid';

const DEMO = readFileSync('size-charts/demo.csv', 'utf8');

/** The grid of a text that is a chart. */
const chartGrid = (text: string): CellGrid => {
  const grid = gridOf(text, 'a', namesMeasurement);
  if (grid === undefined) throw new Error(`no table: ${text}`);
  return grid;
};

describe('the grid of a chart', () => {
  it('is written as a chart that reads the same', () => {
    // Blank lines are left out, so that rows count otherwise.
    const said = ({ rows, comments, ...chart }: SizeChart) => ({
      ...chart,
      values: rows.map(({ values }) => values),
      comments: comments.map(({ text }) => text),
    });
    const again = readChart(gridText(chartGrid(DEMO)), 'demo');
    expect(said(again)).toEqual(said(readChart(DEMO, 'demo')));
  });

  it('has every cell at the row at which the engine finds it', () => {
    const { rows, fileRows } = chartGrid(DEMO);
    const hip = readChart(DEMO, 'demo').rows.find(({ name }) => name === 'hip_girth');
    const [place] = hip?.places ?? [];
    const at = fileRows.indexOf(place?.row ?? 0);
    expect(rows[at]?.[(place?.column ?? 0) - 1]).toBe(hip?.cells[0]);
    expect(rows[at]?.[0]).toBe('hip_girth');
  });

  it('keeps cells of any letters', () => {
    const cell = fc.stringMatching(/^[\p{L}\p{Nd}<>&()/_-]{1,8}$/u);
    fc.assert(
      fc.property(fc.array(cell, { minLength: 3, maxLength: 3 }), (labels) => {
        const grid = chartGrid('waist_girth,60,70,80');
        const typed = withCells(grid, 0, 1, [labels]);
        expect(chartGrid(gridText(typed)).rows[0]?.slice(1)).toEqual(labels);
      }),
    );
  });

  it('gets rows and columns for what is put beyond its edge, and loses them again', () => {
    const grid = chartGrid('waist_girth,60\nhip_girth,90');
    expect(withCells(grid, 1, 2, [['95'], ['1', '2']]).rows).toEqual([
      ['waist_girth', '60', '', ''],
      ['hip_girth', '90', '95', ''],
      ['', '', '1', '2'],
    ]);
    expect(withColumn(grid, 1, 'S').rows).toEqual([
      ['waist_girth', 'S', '60'],
      ['hip_girth', '', '90'],
    ]);
    expect(withoutColumn(withColumn(grid, 1, 'S'), 1).rows).toEqual(grid.rows);
    expect(withoutRow(withRow(grid, 'stature'), 2).rows).toEqual(grid.rows);
  });

  it('knows the rows of its own text, also those that are blank or have several lines', () => {
    const grid = chartGrid('# unit: in\n\nwaist_girth,60\nhip_girth,90');
    const typed = asWritten(withCells(withRow(grid, ''), 0, 0, [['waist\ngirth']]));
    const written = asWritten(withRow(typed, 'stature'));
    expect(written.fileRows).toEqual([2, 4, 5, 6]);
    // The blank row is none when it is read again, and moves no other.
    expect(chartGrid(gridText(written)).fileRows).toEqual([2, 4, 6]);
    expect(gridOf('', 'a', namesMeasurement)).toBeUndefined();
  });

  it('takes what a spreadsheet puts on the clipboard', () => {
    expect(pastedCells('35\t36 1/2\r\n7.5\t\r\n')).toEqual([
      ['35', '36 1/2'],
      ['7.5', ''],
    ]);
  });
});
