import { describe, expect, it } from 'vitest';
import { needValues } from '../../src/chart/need-values';
import { readChart } from '../../src/chart/read-chart';
import { expectRefusal } from '../expect-refusal';
import { chartOf } from './charts';

const file = 'chart.csv';
const WAIST = 'waist_girth';
const HIP = 'hip_girth';
const HEADER = ['# unit: in', 'measurement,8,10,12'];
const HIPS = 'hip,34,36,38';

describe('files that are no chart', () => {
  it.each(['', '\n\n', ',,,\n', '# unit: cm\n', '\uFEFF', 'unit,cm'])('%j is empty', (text) => {
    expectRefusal(() => readChart(text, file), 'chart-empty', { file });
  });

  it.each([
    ['never closed', ['', '# x', 'measurement,8,10', 'waist,25,"26', 'hip,34,36'], 4],
    ['closed too late', ['measurement,8,10', '', 'waist,25,"26', 'hip,34,"36"'], 3],
    ['followed by more', ['measurement,8,10', 'waist,"25"x,26', 'hip,34,36'], 2],
  ])('are malformed where a quote is %s', (_, lines, row) => {
    expectRefusal(() => chartOf(...lines), 'csv-malformed', { file, row });
  });

  it('need a known measurement', () => {
    const text = '# unit: in\nmeasurement,8,10\nwaist_girth_curvy,25,26\narm,9,10';
    expectRefusal(
      () => readChart(text, file),
      'measurement-missing',
      { file },
      'waist_girth_curvy',
    );
  });
});

describe('a row that is not needed', () => {
  const with4 = (cell: string) => () => chartOf(...HEADER, 'waist,25,26,27', HIPS, cell);

  it('is refused where a spreadsheet made a date of a cell, as a needed one is', () => {
    for (const date of ['7-Aug', '2026-08-07', '7/8/2026'])
      expectRefusal(
        with4(`waist_to_hip,${date},8,8`),
        'cell-not-a-number',
        { file, row: 5, column: 2, size: '8', measurement: 'waist_to_hip' },
        'which spreadsheet programs make of',
      );
    expect(with4('waist_to_hip,,8,8')().rows[2]?.values[0]).toBeNull();
  });

  it('is told as it was typed where it is too small for three decimals', () => {
    expectRefusal(
      with4('waist_to_hip,0.0001,0.0001,0.0001'),
      'measurement-doubtful',
      { file, row: 5, column: 2, size: '8', measurement: 'waist_to_hip' },
      'waist_to_hip of 0.0001 in is no length',
    );
  });
});

describe('headers', () => {
  it('are needed', () => {
    const place = { file, row: 2 };
    expectRefusal(() => chartOf('# unit: in', 'waist,25,26', HIPS), 'chart-no-header', place);
  });

  it('must not be doubtful', () => {
    expectRefusal(
      () =>
        chartOf('# unit: in', 'Skirts, spring, 2024', 'Misses,8,10', 'waist,25,26', 'hip,34,36'),
      'chart-no-header',
      { file, row: 2 },
      'row 2, row 3',
    );
  });

  it('must not come twice with other sizes', () => {
    const table = ['# unit: in', 'measurement,8,10', 'waist,25,26', 'hip,34,36'];
    const depth = 'waist to hip,8,8';
    for (const second of ['measurement,12,14', ',S,M'] as const)
      expectRefusal(
        () => chartOf(...table, second, depth),
        'chart-no-header',
        { file, row: 5 },
        second.slice(-2).replace(',', ''),
      );
    expect(chartOf(...table, 'measurement,8,10', depth, 'US size,4,6').sizes).toEqual(['8', '10']);
  });

  it('may have a column of remarks, but of none by which girths count otherwise', () => {
    const rows = (remark: string) => ['# unit: in', 'size,waist,hip,notes', `8,25,34,${remark}`];
    expect(chartOf(...rows('over a coat')).sizes).toEqual(['8']);
    const at = { file, row: 3, column: 4, size: '8' };
    expectRefusal(() => chartOf(...rows('girths halved')), 'sheet-malformed', at);
  });

  it('must have sizes in charts of one size a row', () => {
    expectRefusal(
      () => chartOf('# unit: in', 'waist,hip,length', '25,34,20', '26,36,20'),
      'chart-no-header',
      { file, row: 2 },
      'waist',
    );
  });
});

describe('units', () => {
  const body = ['measurement,8,10', 'waist,25,26', 'hip,34,36'];

  it('are needed', () => {
    expectRefusal(() => chartOf(...body), 'unit-missing', { file });
    // One number without its unit leaves all in doubt.
    const marked = ['measurement,8,10', 'waist,25",26"', 'hip,34",36'];
    expectRefusal(() => chartOf(...marked), 'unit-missing', { file });
  });

  it('are known', () => {
    const place = { file, row: 1 };
    expectRefusal(() => chartOf('# unit: ells', ...body), 'unit-unknown', place, 'ells');
    expectRefusal(() => chartOf('# unit:', ...body), 'unit-unknown', place, 'nothing');
    expectRefusal(
      () => chartOf('unit,ells', ...body),
      'unit-unknown',
      { ...place, column: 2 },
      'ells',
    );
  });

  it('are stated once, or alike', () => {
    expectRefusal(
      () => chartOf('# unit: in', '# unit: cm', ...body),
      'unit-contradicted',
      { file, row: 2 },
      'in',
      'cm',
    );
    expectRefusal(
      () => chartOf('# unit: in', 'measurement,8,10', 'waist (cm),25,26', 'hip,34,36'),
      'unit-contradicted',
      { file, row: 3, column: 1 },
      'cm',
    );
    expectRefusal(
      () => chartOf('measurement [mm],8,10', 'waist,25,26', 'hip (in),34,36'),
      'unit-contradicted',
      { file, row: 3, column: 1 },
      'millimeters',
    );
  });

  it('hold for every cell', () => {
    expectRefusal(
      () => chartOf(...HEADER, 'waist,25,67 cm,28', HIPS),
      'unit-contradicted',
      { file, row: 3, column: 3, size: '10', measurement: WAIST },
      '67 cm',
    );
    expectRefusal(
      () => chartOf(...HEADER, 'waist,25,26,28', HIPS, 'high hip,,,90 cm'),
      'unit-contradicted',
      { file, row: 5, column: 4, size: '12', measurement: 'high_hip_girth' },
      '90 cm',
    );
  });

  it.each([
    ['cm', 'in', '25,26.5,28', '34,36,38', 2, WAIST],
    ['in', 'cm', '64,67,68', '90,94,98', 2, HIP],
    ['in', 'mm', '640,670,700', '900,940,980', 2, WAIST],
    ['mm', 'cm', '64,67,70', '90,94,98', 2, WAIST],
    ['in', 'cm', '64,67,68', '70,72,98', 4, HIP],
  ])('%s cannot be stated of numbers in %s', (stated, meant, waists, hips, column, measurement) => {
    expectRefusal(
      () => chartOf(`# unit: ${stated}`, 'size,8,10,12', `waist,${waists}`, `hip,${hips}`),
      'unit-contradicted',
      {
        file,
        row: measurement === WAIST ? 3 : 4,
        column,
        size: column === 2 ? '8' : '12',
        measurement,
      },
      stated,
      `unit: ${meant}`,
    );
  });

  it.each([
    ['a child', 'cm', '53,76', '54,80'],
    ['a slim body', 'cm', '45,46', '55,56'],
    ['a large body', 'in', '50,65.75', '63,69.375'],
  ])('are believed for %s', (_, unit, waists, hips) => {
    const chart = chartOf(`# unit: ${unit}`, 'size,A,B', `waist,${waists}`, `hip,${hips}`);
    expect(chart.unit).toBe(unit);
  });
});

describe('needed cells', () => {
  it.each([
    ['', 'cell-missing', 'nothing'],
    ['\u00A0', 'cell-missing', 'nothing'],
    ['abc', 'cell-not-a-number', 'abc'],
    ['1e3', 'cell-not-a-number', '1e3'],
    ['=26', 'cell-not-a-number', '=26'],
    ['26/28', 'cell-not-a-number', '26/28'],
    ['26-28', 'cell-not-a-number', '26-28'],
    ['0', 'cell-not-positive', '0'],
    ['-26', 'cell-not-positive', '-26'],
  ] as const)('%j is refused', (cell, code, got) => {
    expectRefusal(
      () => chartOf(...HEADER, `waist,25,${cell},28`, HIPS),
      code,
      { file, row: 3, column: 3, size: '10', measurement: WAIST },
      got,
    );
    expectRefusal(
      () => chartOf('# unit: in', '', 'size,hip,waist', `8,34,25`, `10,${cell},26`, '12,38,28'),
      code,
      { file, row: 5, column: 2, size: '10', measurement: HIP },
      got,
    );
  });

  it('are refused where the row is too short', () => {
    expectRefusal(() => chartOf(...HEADER, 'waist,25,26', HIPS), 'cell-missing', {
      ...{ file, row: 3, column: 4, size: '12', measurement: WAIST },
    });
  });

  it('are refused where a comma may part thousands', () => {
    expectRefusal(
      () => chartOf('# unit: mm', 'size,A,B', 'waist,640,680', 'hip,980,"1,020"'),
      'cell-not-a-number',
      { file, row: 4, column: 3, size: 'B', measurement: HIP },
      '1,020',
    );
  });
});

describe('rows', () => {
  it('of waist and hip are needed', () => {
    expectRefusal(() => chartOf(...HEADER, 'waist,25,26,28'), 'measurement-missing', {
      ...{ file, measurement: HIP },
    });
    expectRefusal(() => chartOf(...HEADER, HIPS), 'measurement-missing', {
      ...{ file, measurement: WAIST },
    });
    expectRefusal(
      () => chartOf('# unit: in', 'size,waist', '8,25', '10,26'),
      'measurement-missing',
      { file, measurement: HIP },
    );
  });

  it.each([
    ['waist_girth', WAIST],
    ['Waist', WAIST],
    ['waist (in)', WAIST],
  ])('of one measurement are refused: waist and %s', (label, measurement) => {
    expectRefusal(
      () => chartOf(...HEADER, 'waist,25,26,28', HIPS, `${label},25,26,28`),
      'measurement-twice',
      { file, row: 5, column: 1, measurement },
      'row 3',
      'row 5',
      label,
    );
  });

  it('of one unknown measurement are refused', () => {
    expectRefusal(
      () => chartOf(...HEADER, 'arm,9,9,9', 'waist,25,26,28', HIPS, 'Arm (in),9,9,9'),
      'measurement-twice',
      { file, row: 6, column: 1, measurement: 'arm' },
      'row 3',
    );
  });
});

describe('sizes', () => {
  it('have names of their own', () => {
    expectRefusal(
      () => chartOf('# unit: in', 'measurement,8,10, 8 ', 'waist,25,26,28', HIPS),
      'size-twice',
      { file, row: 2, column: 4, size: '8' },
      'column 2',
      'column 4',
    );
    expectRefusal(
      () => chartOf('# unit: in', 'size,waist,hip', '8,25,34', '8,26,36'),
      'size-twice',
      { file, row: 4, column: 1, size: '8' },
      'row 3',
      'row 4',
    );
  });

  it('have names where they have cells', () => {
    expectRefusal(
      () => chartOf('# unit: in', 'measurement,8,,12', 'waist,25,26,28', HIPS),
      'size-missing',
      { file, row: 3, column: 3, measurement: WAIST },
      '26',
    );
    expectRefusal(() => chartOf(...HEADER, 'waist,25,26,28', `${HIPS},40`), 'size-missing', {
      ...{ file, row: 4, column: 5, measurement: HIP },
    });
    expectRefusal(
      () => chartOf('# unit: in', 'size,waist,hip', '8,25,34', ',26,36', '12,28,38'),
      'size-missing',
      { file, row: 4, column: 2, measurement: WAIST },
      '26',
    );
  });

  it('are more than none', () => {
    expectRefusal(
      () => chartOf('# unit: in', 'measurement,', 'waist,', 'hip,'),
      'chart-no-header',
      { file, row: 3 },
      'no line above the measurements names the sizes',
    );
  });

  it('may be one, with the name and the cells that any size has', () => {
    expect(chartOf('# unit: in', 'measurement,8', 'waist,25', 'hip,34').sizes).toEqual(['8']);
    expect(chartOf('# unit: in', 'size,waist,hip', 'me,25,34').sizes).toEqual(['me']);
    expectRefusal(
      () => chartOf('# unit: cm', 'measurement,me', 'waist,68,5', 'hip,94,5'),
      'size-missing',
      { file, row: 3, column: 3, measurement: WAIST },
      'Got: 5',
    );
    expectRefusal(() => chartOf('# unit: cm', 'waist,68', 'hip,94'), 'chart-no-header', {
      file,
      row: 2,
    });
    expectRefusal(
      () => chartOf('# unit: cm', 'measurement,total', 'waist,68', 'hip,94'),
      'size-missing',
      { file, row: 2, column: 2, size: 'total' },
    );
  });
});

describe('a range that turns back', () => {
  it.each([
    ['smaller', '25,24,27,28', '35,34,37,38', '10', 3],
    ['larger', '25,29,27,28', '35,39,37,38', '10', 3],
    ['smaller and like the next', '25,24,24,27', '35,34,34,37', '10', 3],
    ['larger and like the next', '25,26,26.5,26.5,26,28', '35,36,37,37,36,38', '12', 4],
  ])('is refused where a size is %s', (_, waists, hips, size, column) => {
    const sizes = waists.split(',').map((_waist, index) => String(8 + 2 * index));
    const lines = [`measurement,${sizes.join(',')}`, `waist,${waists}`, `hip,${hips}`];
    expectRefusal(
      () => chartOf('# unit: in', ...lines),
      'range-turns',
      { file, row: 3, column, size, measurement: WAIST },
      `size ${size}`,
    );
  });

  it('is refused at the first size that turns, in file order or against it', () => {
    const place = { file, row: 3, column: 3, size: '10', measurement: WAIST };
    const up = ['measurement,8,10,12,14', 'waist,25,24,26,28', 'hip,35,34,36,38'];
    expectRefusal(() => chartOf('# unit: in', ...up), 'range-turns', place, '24', '34', 'size 8');
    const down = ['measurement,14,12,10,8', 'waist,28,26,24,25', 'hip,38,36,34,35'];
    expectRefusal(
      () => chartOf('# unit: in', ...down),
      'range-turns',
      { ...place, column: 4 },
      'size 12',
    );
    expectRefusal(
      () => chartOf('# unit: in', 'size,waist,hip', '8,25,35', '10,24,34', '12,26,36'),
      'range-turns',
      { ...place, row: 4, column: 2 },
    );
  });

  it.each([
    ['only the waist', '25,24,26', '35,36,37'],
    ['only the hip', '25,26,27', '35,34,37'],
    ['a waist that stays', '25,25,27', '35,34,37'],
    ['hips smaller than waists', '40,42,44', '38,40,42'],
    ['sizes alike', '25,25,27,27', '35,35,37,37'],
  ])('is not seen in %s', (_, waists, hips) => {
    const sizes = waists.split(',').map((_waist, index) => `S${index}`);
    const text = ['# unit: in', `size,${sizes.join(',')}`, `waist,${waists}`, `hip,${hips}`];
    expect(chartOf(...text).sizes).toEqual(sizes);
  });
});

describe('needValues', () => {
  const chart = chartOf(
    ...['# unit: in', 'measurement,12,10,8', 'waist,28,26,25', 'hip,38,36,34'],
    ...['high hip,34,oops,30', 'waist to hip,8.5,8.25,8'],
  );

  it('gives whole rows in the order of the chart', () => {
    expect(needValues(chart, 'waist_to_hip')).toEqual([203.2, 209.55, 215.9]);
  });

  it('refuses what is not there', () => {
    expectRefusal(
      () => needValues(chart, 'high_hip_girth'),
      'cell-not-a-number',
      { file, row: 5, column: 3, size: '10', measurement: 'high_hip_girth' },
      'oops',
    );
    expectRefusal(
      () => needValues(chart, 'knee_height'),
      'measurement-missing',
      { file, measurement: 'knee_height' },
      'high hip',
    );
  });
});
