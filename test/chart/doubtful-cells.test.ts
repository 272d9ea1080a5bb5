import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { unreadInChart } from '../../src/check/not-read';
import { farthestFromNeighbors } from '../../src/chart/row-neighbors';
import { readChart } from '../../src/chart/read-chart';
import { publishedTable, publishedTables } from '../../src/standards/published-tables';
import { fromMillimeters, trimmed } from '../../src/units';
import { chartOf } from './charts';
import { expectRefusal } from '../expect-refusal';

const file = 'chart.csv';
const WAIST = 'waist_girth';
const HIP = 'hip_girth';
const TABLES = publishedTables()
  .filter(({ unusable }) => unusable === undefined)
  .map(({ id }) => publishedTable(id));

describe('a cell far from its neighbors', () => {
  it.each([
    // A point left out, a point in the wrong place, two digits exchanged, the other unit.
    ['in', '25,26,270,28,29.5', '35,36,37,38,39.5', 4, '12', WAIST, '27?'],
    ['cm', '"64","7,2","76","80"', '94,98,102,106', 3, '10', WAIST, '72?'],
    ['cm', '64,68,72,76', '94,98,1.02,106', 4, '12', HIP, '102?'],
    ['cm', '64,68,27,76', '94,98,102,106', 4, '12', WAIST, '72?'],
    ['cm', '64,68,72,30', '94,98,102,106', 5, '14', WAIST, '76.2, which is 30 in?'],
    ['in', '26,70', '36,38', 3, '10', WAIST, '27.559, which is 70 cm?'],
  ])('in %s %s is refused', (unit, waists, hips, column, size, measurement, meant) => {
    const sizes = ['8', '10', '12', '14', '16'].slice(0, hips.split(',').length);
    expectRefusal(
      () => chartOf(`# unit: ${unit}`, `size,${sizes.join(',')}`, `waist,${waists}`, `hip,${hips}`),
      'measurement-doubtful',
      { file, row: measurement === WAIST ? 3 : 4, column, size, measurement },
      `did you mean ${meant}`,
    );
  });

  it('is found in rows that are not needed, and asked about without a guess where none is near', () => {
    expectRefusal(
      () =>
        chartOf(
          '# unit: cm',
          'size,A,B,C',
          'waist,64,68,72',
          'hip,94,98,102',
          'height,168,618,168',
        ),
      'measurement-doubtful',
      { file, row: 5, column: 3, size: 'B', measurement: 'stature' },
    );
    expectRefusal(
      () =>
        chartOf('# unit: cm', 'size,A,B,C', 'waist,64,68,72', 'hip,94,98,102', 'length,60,95,62'),
      'measurement-doubtful',
      { file, row: 5, column: 3, size: 'B', measurement: 'skirt_length' },
      'about 61 cm',
    );
  });

  it('is named with what was meant where several cells came from a sheet in inches', () => {
    // By hand: 24 x 2.54 = 60.96, beside sizes of 60.
    expectRefusal(
      () =>
        chartOf(
          ...['# unit: cm', 'size,A,B,C,D,E', 'waist,64,68,72,76,80', 'hip,94,98,102,106,110'],
          'length,60,60,60,24,24',
        ),
      'measurement-doubtful',
      { file, row: 5, column: 5, size: 'D', measurement: 'skirt_length' },
      'did you mean 60.96, which is 24 in?',
    );
  });

  it('is the one planted, whichever it is, in every published table', () => {
    // Independent of the median: a tenfold or a tenth of one cell, at every place of every table.
    for (const table of TABLES)
      for (const { values } of [table.waist, table.hip])
        values.forEach((value, index) => {
          for (const slip of [value * 10, value / 10]) {
            const typed = values.map((other, i) => (i === index ? slip : other));
            expect(farthestFromNeighbors(typed, () => false)?.index).toBe(index);
          }
        });
  });

  it('is found and nothing else is doubted, in charts of any steps up to 6 cm', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 550, max: 900 }),
        fc.array(fc.integer({ min: 0, max: 60 }), { minLength: 1, maxLength: 15 }),
        fc.nat(),
        fc.constantFrom(0.1, 10),
        (least, steps, place, times) => {
          const values = steps.reduce((all, step) => [...all, (all.at(-1) ?? 0) + step], [least]);
          expect(farthestFromNeighbors(values, () => false)).toBeUndefined();
          const at = place % values.length;
          const typed = values.map((value, i) => (i === at ? value * times : value));
          // Two sizes alone cannot say which of them is odd.
          const odd = (value: number) => value < 450 || value > 1900;
          expect(farthestFromNeighbors(typed, odd)?.index).toBe(at);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('is not seen in any published table, nor in lengths and heights of two kinds', () => {
    for (const table of TABLES)
      for (const { values } of [table.waist, table.hip])
        expect(farthestFromNeighbors(values, () => false)).toBeUndefined();
    expect(farthestFromNeighbors([50, 50, 50, 70, 70, 70], () => false)).toBeUndefined();
    expect(farthestFromNeighbors([160, 160, 168, 168, 176], () => false)).toBeUndefined();
    expect(farthestFromNeighbors([66, 92], () => false)).toBeUndefined();
    expect(farthestFromNeighbors([null, 66, null], () => false)).toBeUndefined();
  });
});

describe('a cell that is no body’s', () => {
  it('is refused where no unit makes it an adult girth', () => {
    expectRefusal(
      () => chartOf('# unit: cm', 'size,A,B', 'waist,64,68', 'hip,94,"9,8"'),
      'measurement-doubtful',
      { file, row: 4, column: 3, size: 'B', measurement: HIP },
      "no adult's in inches, centimeters or millimeters",
      '55 to 190 cm',
    );
    expectRefusal(
      () => chartOf('# unit: cm', 'size,A,B', 'waist,64,68', 'hip,94,98', 'ankle,21,2.2'),
      'measurement-doubtful',
      { file, row: 5, column: 3, size: 'B', measurement: 'ankle_girth' },
    );
  });

  it('is refused where a length is no body’s', () => {
    expectRefusal(
      () => chartOf('# unit: cm', 'size,A,B', 'waist,64,68', 'hip,94,98', 'height,501,501'),
      'measurement-doubtful',
      { file, row: 5, column: 2, size: 'A', measurement: 'stature' },
      '120 to 225 cm',
    );
  });

  it('is refused as a column where none of its girths is one', () => {
    expectRefusal(
      () => chartOf('# unit: in', 'size,8,10,12,+', 'waist,25,26,27,0.5', 'hip,35,36,37,0.5'),
      'measurement-doubtful',
      { file, row: 3, column: 5, size: '+', measurement: WAIST },
      '"+" stands where a size does',
      '0.5, 0.5',
    );
  });
});

describe('columns that are no sizes', () => {
  const beside = (name: string, waist: string, hip: string) =>
    chartOf('# unit: in', `size,8,10,12,${name}`, `waist,25,26,27,${waist}`, `hip,35,36,37,${hip}`);

  it.each([
    ...[
      'tolerance',
      'Tol.',
      'Tolerance (in)',
      '+/-',
      '±',
      'Notes',
      'Grade step',
      'average',
      'Total',
    ],
    ...['Description', 'How to measure', 'POM', 'Grade break', 'Min', 'Max', 'Source', 'Date'],
  ])('%s is left out, and told as not read', (name) => {
    const chart = beside(name, '26', '36');
    expect(chart.sizes).toEqual(['8', '10', '12']);
    expect(chart.rows.map(({ cells }) => cells)).toEqual([
      ['25', '26', '27'],
      ['35', '36', '37'],
    ]);
    expect(unreadInChart(chart)).toEqual([
      { text: `column ${name}`, place: { file, row: 2, column: 5 }, others: 0 },
    ]);
    // The same with one size a row.
    const turned = chartOf('# unit: in', 'size,waist,hip', '8,25,35', '10,26,36', `${name},1,1`);
    expect(turned.sizes).toEqual(['8', '10']);
    expect(unreadInChart(turned).map(({ text }) => text)).toEqual([`row ${name}`]);
  });

  it.each(['Ease', 'Factor', 'Half', 'Quarter'])(
    '%s says how others count, and is refused',
    (name) => {
      expectRefusal(
        () => beside(name, '2', '2'),
        'size-missing',
        { file, row: 2, column: 5, size: name },
        name,
      );
    },
  );

  it.each(['measured flat', 'half girth', 'in cm'])('a note that says %s is refused', (note) => {
    expect(() => beside('Notes', note, '')).toThrow(
      /a remark (?:seems to state|names another unit)/u,
    );
  });

  it('a label that calls its size the base is refused, since it would stand on every piece', () => {
    expectRefusal(
      () => chartOf('# unit: in', 'size,8,10 (base)', 'waist,25,26', 'hip,35,36'),
      'sheet-malformed',
      { file, row: 2, column: 3 },
      'a line such as "# base: 12"',
    );
  });

  it.each(['M', '38', 'XL', '14W', 'tall', 'Stepford'])('%s is a size', (name) => {
    const text = ['# unit: in', `size,8,10,${name}`, 'waist,25,26,27', 'hip,35,36,37'];
    expect(chartOf(...text).sizes).toContain(name);
  });
});

describe('a mark of a footnote behind a number', () => {
  it('is left out, and told with its number', () => {
    const chart = chartOf(
      '# unit: in',
      'size,8,10',
      'waist,25*,26',
      'hip,35 1/2 **,36',
      '* taken twice',
    );
    expect(chart.rows[0]?.values).toEqual([25 * 25.4, 26 * 25.4]);
    expect(chart.rows[1]?.values[0]).toBeCloseTo(35.5 * 25.4, 9);
    expect(unreadInChart(chart).map(({ text, place }) => [text, place.row, place.column])).toEqual([
      ['the mark of 25*', 3, 2],
      ['the mark of 35 1/2 **', 4, 2],
      ['* taken twice', 5, undefined],
    ]);
  });
});

describe('marks that part thousands', () => {
  it.each(['1,020', '1.020', "1'020", '1 020'])('%s is asked about in a chart in mm', (cell) => {
    expectRefusal(
      () => chartOf('# unit: mm', 'size,A,B', 'waist,640,680', `hip,980,"${cell}"`),
      'cell-not-a-number',
      { file, row: 4, column: 3, size: 'B', measurement: HIP },
      'did you mean 1020?',
    );
  });

  it('leave decimals of converted inches alone', () => {
    // 23 7/8 in is 606.425 mm.
    const chart = readChart('# unit: mm\nsize,A,B\nwaist,606.425,631.825\nhip,863.6,889', file);
    expect(chart.rows[0]?.values).toEqual([606.425, 631.825]);
    expect(trimmed(fromMillimeters(606.425, 'in'), 6)).toBe('23.875');
  });
});
