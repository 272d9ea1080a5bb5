/** The cloth told in a printed pattern: the numbers of `fabric.csv`, a row for each way of folding. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { FabricNeed } from '../../src/index';
import { exportFiles, fabricNeeds } from '../../src/index';
import { cutSize } from '../../src/files/fabric-files';
import { fabricTables, worthLaying } from '../../src/files/fabric-table';
import type { SizeTable } from '../../src/print/size-table';
import { inchFraction, toMillimeters } from '../../src/units';
import { rowsOf } from '../csv-tables';
import { gradedOnce } from '../graded';
import { faults } from '../fabric/lay-pieces';
import { isLay } from '../../src/fabric/lay';

const SIZES = ['2', '8', '12', '18', '24'];
const result = gradedOnce({
  chart: readFileSync('size-charts/demo.csv', 'utf8'),
  base: '12',
  style: 'shared-pencil',
  sizes: SIZES,
});
/** The words of the table for the ways of `fabric.csv`. */
const FOLDS = { folded: 'folded once', middle: 'folded to the middle', open: 'open flat' };

let needs: readonly FabricNeed[] = [];
let tables: readonly SizeTable[] = [];
let csv: readonly Readonly<Record<string, string>>[] = [];
beforeAll(async () => {
  needs = worthLaying(fabricNeeds(result.shown.map(cutSize), { naps: ['with'] }));
  tables = fabricTables(needs);
  const { files } = await exportFiles(result, ['fabric']);
  csv = rowsOf(files.find(({ name }) => name === 'fabric.csv')?.text ?? '');
});

function printedRow(cloth: string, width: string, unit: string, fold: keyof typeof FOLDS) {
  const table = tables.find(({ heading }) => heading.includes(`, ${cloth},`));
  return table?.rows.filter(({ name, detail = '' }) => {
    const told = [...name.matchAll(/([\d, ]+) (cm|in)/g)].some(
      ([, values = '', of]) =>
        of === unit && values.split(', ').map(Number).includes(Number(width)),
    );
    return (name === 'any width' || told) && detail.split(' or ').includes(FOLDS[fold]);
  });
}

describe('the printed table of cloth', () => {
  it('has the numbers of fabric.csv for each cloth, width and way of folding', () => {
    const bought = csv.filter(({ nap }) => nap === 'with');
    let compared = 0;
    for (const row of bought) {
      const { cloth = '', width = '', unit = '', fold = '', measure = '' } = row;
      if (measure !== 'buy_cm' && measure !== 'buy_yd') continue;
      const found = printedRow(cloth, width, unit, fold as keyof typeof FOLDS) ?? [];
      if (fold === 'middle' && found.length === 0) continue;
      expect(found, `${cloth} ${width} ${unit} ${fold}`).toHaveLength(1);
      const line = found[0]?.lines.find(
        (each) => each.unit === (measure === 'buy_cm' ? 'cm' : 'yd'),
      );
      const cells = SIZES.map((size) => {
        const cell = row[size] ?? '';
        if (cell === '') return '-';
        return measure === 'buy_cm' ? cell : inchFraction(toMillimeters(Number(cell), 'in'), 8);
      });
      expect(line?.cells).toEqual(cells);
      compared++;
    }
    expect(compared).toBeGreaterThanOrEqual(3 * 8 * 2 * 2);
  });

  it('asks for as much as the way it names takes: size 12 on 140 cm', () => {
    const cell = (fold: keyof typeof FOLDS): number =>
      Number(printedRow('shell', '140', 'cm', fold)?.[0]?.lines[0]?.cells[SIZES.indexOf('12')]);
    for (const fold of ['folded', 'open'] as const) {
      const need = needs.find(
        (n) => n.cloth === 'shell' && n.width.value === 140 && n.fold === fold,
      );
      const lay = need?.sizes[SIZES.indexOf('12')]?.lay;
      if (lay === undefined || !isLay(lay)) throw new RangeError('no lay');
      expect(faults(lay)).toEqual([]);
      expect(10 * cell(fold)).toBeGreaterThanOrEqual(1.05 * lay.length);
    }
  });

  it('never falls from one size to the next', () => {
    for (const { rows } of tables) {
      for (const { lines } of rows) {
        const numbers = (lines[0]?.cells ?? []).filter((cell) => cell !== '-').map(Number);
        expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
      }
    }
  });

  it('joins rows of the same numbers', () => {
    for (const { rows } of tables) {
      const kinds = rows.map(({ detail, lines }) => JSON.stringify([detail, lines]));
      expect(new Set(kinds).size).toBe(kinds.length);
    }
    expect(tables.at(-1)?.rows.map(({ name }) => name)).toContain('any width');
  });

  it('shows fewer pictures than lays, and at least one for each way', () => {
    for (const { heading, pictures = [] } of tables) {
      const own = needs.filter(({ cloth }) => heading.includes(`, ${cloth},`));
      const lays = own.flatMap(({ sizes }) => sizes).filter(({ lay }) => isLay(lay));
      expect(pictures.length).toBeGreaterThan(0);
      expect(pictures.length).toBeLessThan(lays.length / 4);
    }
  });
});
