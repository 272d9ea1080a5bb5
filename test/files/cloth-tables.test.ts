/** The cloth told in a printed pattern: the numbers of `fabric.csv`, a row for each way of folding. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { FabricNeed } from '../../src/index';
import { exportFiles, fabricNeeds } from '../../src/index';
import { PAIRED_WIDTHS, clothWidth } from '../../src/fabric/cloth';
import { cutSize } from '../../src/files/fabric-files';
import { fabricTables, worthLaying } from '../../src/files/fabric-table';
import type { Shape } from '../../src/render/scene';
import type { SizeTable } from '../../src/print/size-table';
import { inchFraction, toMillimeters } from '../../src/units';
import { rowsOf } from '../csv-tables';
import { gradedOnce } from '../graded';
import { faults } from '../fabric/lay-pieces';
import { isLay } from '../../src/fabric/lay';

const CHART = readFileSync('size-charts/demo.csv', 'utf8');
const SIZES = ['2', '8', '12', '18', '24'];
const result = gradedOnce({
  chart: CHART,
  base: '12',
  style: 'shared-pencil',
  sizes: SIZES,
});
/** Of 90 cm and 36 in, 112 cm and 45 in, 140 cm and 54 in, 150 cm and 60 in, by hand. */
const NARROWER = ['90 cm', '112 cm', '54 in', '150 cm'];

/** The words of the table for the ways of `fabric.csv`. */
const FOLDS = { folded: 'folded once', middle: 'folded to the middle', open: 'open flat' };

let needs: readonly FabricNeed[] = [];
let tables: readonly SizeTable[] = [];
let csv: readonly Readonly<Record<string, string>>[] = [];
beforeAll(async () => {
  needs = worthLaying(
    fabricNeeds(result.shown.map(cutSize), { widths: PAIRED_WIDTHS, naps: ['with'] }),
  );
  tables = fabricTables(needs);
  const { files } = await exportFiles(result, ['fabric']);
  csv = rowsOf(files.find(({ name }) => name === 'fabric.csv')?.text ?? '');
});

function wordsIn(shapes: readonly Shape[]): readonly string[] {
  return shapes.flatMap((shape) =>
    shape.kind === 'group' ? wordsIn(shape.children) : shape.kind === 'text' ? [shape.words] : [],
  );
}

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
  it('has a row for both markets on the narrower cloth of each pair', () => {
    expect(PAIRED_WIDTHS.map(({ value, unit }) => `${value} ${unit}`)).toEqual(NARROWER);
    for (const width of PAIRED_WIDTHS)
      expect(clothWidth(width.serves ?? width)).toBeGreaterThan(clothWidth(width));
    expect(printedRow('shell', '36', 'in', 'folded')).toEqual(
      printedRow('shell', '90', 'cm', 'folded'),
    );
  });

  it('has the numbers of fabric.csv for each cloth, width and way of folding', () => {
    const bought = csv.filter(({ nap }) => nap === 'with');
    let compared = 0;
    for (const row of bought) {
      const { cloth = '', width = '', unit = '', fold = '', measure = '' } = row;
      if (measure !== 'buy_cm' && measure !== 'buy_yd') continue;
      const found = printedRow(cloth, width, unit, fold as keyof typeof FOLDS) ?? [];
      if (fold === 'middle' && found.length === 0) continue;
      // Of a pair of widths the printed table has the narrower one, on which the lay was made.
      if (!NARROWER.includes(`${width} ${unit}`)) continue;
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
    expect(compared).toBeGreaterThanOrEqual(3 * 4 * 2 * 2);
  });

  it('asks for as much as the way it names takes: size 12 on 54 in', () => {
    const cell = (fold: keyof typeof FOLDS): number =>
      Number(printedRow('shell', '54', 'in', fold)?.[0]?.lines[0]?.cells[SIZES.indexOf('12')]);
    for (const fold of ['folded', 'open'] as const) {
      const need = needs.find(
        (n) => n.cloth === 'shell' && n.width.value === 54 && n.fold === fold,
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

  it.each([
    ['pencil', false],
    ['shared-pencil', true],
  ])(
    'says what one layer is where a picture of %s has such a piece, and nowhere else',
    (style, is) => {
      const one = gradedOnce({ chart: CHART, base: '12', style, sizes: ['12'] });
      const widths = PAIRED_WIDTHS.filter(({ value }) => value < 112);
      const own = fabricTables(fabricNeeds(one.shown.map(cutSize), { widths, naps: ['with'] }));
      const inPictures = own
        .flatMap(({ pictures = [] }) => wordsIn(pictures.flatMap(({ shapes }) => shapes)))
        .filter((words) => words.includes('one layer') && !words.includes('in one layer'));
      const notes = own.flatMap(({ notes: said = [] }) => said).join(' ');
      expect(inPictures.length > 0).toBe(is);
      expect(notes.includes('One layer')).toBe(is);
      expect(notes.includes('when the others are cut')).toBe(
        inPictures.some((words) => words.includes('last')),
      );
    },
  );

  it('speaks of a size and of sizes', () => {
    const told = tables.flatMap(({ pictures = [] }) =>
      wordsIn(pictures.flatMap(({ shapes }) => shapes)),
    );
    const said = told.join(' ').match(/\b(?:for |: )?sizes? \d+(?:(?:,| to) \d+)?/gu) ?? [];
    expect(said.length).toBeGreaterThan(5);
    const several = said.filter((words) => /,| to /u.test(words));
    expect(several.length).toBeGreaterThan(0);
    for (const words of several) expect(words).toContain('sizes');
    expect(told.join(' ')).not.toMatch(/: sizes \d+(?:;| Drawn)/u);
  });

  it('shows fewer pictures than lays, and at least one for each way', () => {
    for (const { heading, pictures = [] } of tables) {
      const own = needs.filter(({ cloth }) => heading.includes(`, ${cloth},`));
      const lays = own.flatMap(({ sizes }) => sizes).filter(({ lay }) => isLay(lay));
      expect(pictures.length).toBeGreaterThan(0);
      expect(pictures.length).toBeLessThan(lays.length / 2);
    }
  });
});
