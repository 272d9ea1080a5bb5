import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/chart/read-chart';
import { findRow } from '../../src/chart/size-chart';
import { CANONICAL, chartOf, expectSameMeaning, meaning } from './charts';

const canonical = readChart(CANONICAL, 'canonical.csv');

/** The inch mark behind each number of a table. */
const marked = (text: string): string =>
  text.replace(/(?<=^(?:waist|hip)[a-z_]+,.*)(\d)(?=,|$)/gmu, '$1"');

describe('the canonical form', () => {
  it('is read as it stands', () => {
    expect(canonical).toMatchObject({
      file: 'canonical.csv',
      comments: [],
      unit: 'in',
      sizes: ['8', '10', '12'],
      layout: 'measurement-rows',
      largestFirst: false,
    });
    expect(canonical.rows[1]).toEqual({
      name: 'hip_girth',
      label: 'hip_girth',
      known: true,
      values: [876.3, 914.4, 965.2],
      cells: ['34.5', '36', '38'],
      places: [
        { row: 4, column: 2 },
        { row: 4, column: 3 },
        { row: 4, column: 4 },
      ],
    });
  });

  it.each([
    ['byte order mark', `\uFEFF${CANONICAL}`],
    ['CRLF', CANONICAL.replaceAll('\n', '\r\n')],
    ['lone CR', CANONICAL.replaceAll('\n', '\r')],
    ['tabs', CANONICAL.replaceAll(',', '\t')],
    ['semicolons', CANONICAL.replaceAll(',', ';')],
    ['decimal commas', CANONICAL.replaceAll(',', ';').replaceAll('.', ',')],
    ['decimal commas and tabs', CANONICAL.replaceAll(',', '\t').replaceAll('.', ',')],
    ['quoted decimal commas', CANONICAL.replace(/(\d+)\.(\d+)/g, '"$1,$2"')],
    ['an announced delimiter', `sep=;\n${CANONICAL.replaceAll(',', ';')}`],
    ['trailing empty columns', CANONICAL.replace(/$/gm, ',,,,')],
    ['leading empty columns', CANONICAL.replace(/^(?!#)/gm, ',,')],
    ['leading empty rows', `\n,,,\n\n${CANONICAL}`],
    ['every cell quoted', CANONICAL.replace(/[^,\n]+(?=,|$)/gm, '"$&"')],
    ['blanks around quotes', CANONICAL.replace(/(?<=,)([^,\n]+)/gm, ' "$1" ')],
    ['a title', `Skirts\n${CANONICAL}`],
    ['a title with commas', `Skirts, spring, misses\n${CANONICAL}`],
    ['a title with many commas', `Skirts, spring, misses, v2, draft, final\n${CANONICAL}`],
    ['titles', `Skirts; spring\n"Misses, all"\nby hand, in pencil,,\n\n${CANONICAL}`],
    ['no corner', CANONICAL.replace('measurement', '')],
    ['another corner', CANONICAL.replace('measurement', 'Misses')],
    ['unit behind every number', marked(CANONICAL.replace('# unit: in\n', ''))],
    ['unit with equals', CANONICAL.replace('unit: in', 'Unit = IN')],
    ['unit spelled out', CANONICAL.replace('unit: in', 'UNITS: Inches')],
    ['unit without mark', CANONICAL.replace('# unit: in', 'unit: in')],
    ['unit as a row', CANONICAL.replace('# unit: in', 'unit,in')],
    ['unit comment from a spreadsheet', CANONICAL.replace('# unit: in', '# unit: in,,,')],
    ['quoted comment', CANONICAL.replace('# unit: in', '# unit: in\n"# a, b",,,')],
    ['unit without colon', CANONICAL.replace('unit: in', 'unit in')],
    ['unit and a comma', CANONICAL.replace('unit: in', 'unit,in')],
    ['unit among other words', CANONICAL.replace('unit: in', 'unit: in; y up')],
    ['unit in a title', CANONICAL.replace('# unit: in', 'Skirts of spring,,all lengths in inches')],
    ['unit below the chart', `${CANONICAL.replace('# unit: in', '')}# unit: in`],
    ['unit in the corner', CANONICAL.replace('# unit: in', '').replace('ement', 'ement (in)')],
    ['unit as the corner', CANONICAL.replace('# unit: in', '').replace('measurement', 'inches')],
    ['unit in labels', CANONICAL.replace('# unit: in', '').replace(/_girth/g, ' [in]')],
    [
      'unit in one label',
      CANONICAL.replace('# unit: in', '').replace('waist_girth', '"Waist, in"'),
    ],
    [
      'unit row below the header',
      CANONICAL.replace('# unit: in', '').replace('12', '12\n,in,in,in'),
    ],
    ['synonyms', CANONICAL.replace('hip_girth', 'Full Hips').replace('waist_girth', 'WAIST')],
    [
      'fractions',
      CANONICAL.replace('26.5', '26 1/2').replace('34.5', '34½').replace('8.5', '8-1/2'),
    ],
    ['inch marks', CANONICAL.replace('26.5', '26 1/2"').replace('34.5', '"34 1/2"""')],
    ['units in cells', CANONICAL.replace('26.5', '26.5 in').replace('34.5', '34.5inches')],
  ])('is read the same with %s', (_, text) => {
    expect(meaning(readChart(text, 'other.csv'))).toEqual(meaning(canonical));
    expect(readChart(text, 'other.csv').unit).toBe('in');
  });

  it('keeps comments and titles in order', () => {
    const chart = chartOf(
      'Skirts, spring',
      '# by "hand", in pencil',
      '# unit: cm',
      '',
      'measurement,S,M',
      '# waist: snug',
      'waist,66,70',
      'hip,92,96',
    );
    expect(chart.comments.map(({ text }) => text)).toEqual([
      'Skirts, spring',
      'by "hand", in pencil',
      'waist: snug',
    ]);
    expect(findRow(chart, 'hip_girth')?.places[0]).toEqual({ row: 8, column: 2 });
  });

  it('counts rows past cells of more than one line', () => {
    const chart = chartOf('# unit: cm', '"cm\n(all)",S,M', 'waist,66,70', 'hip,92,96');
    expect(chart.sizes).toEqual(['S', 'M']);
    expect(findRow(chart, 'waist_girth')?.places[1]).toEqual({ row: 4, column: 3 });
  });

  it('is the same in inches and in centimeters', () => {
    const cm = chartOf(
      '# unit: cm',
      'measurement,8,10,12',
      'waist_girth,63.5,67.31,71.12',
      'hip_girth,87.63,91.44,96.52',
      'waist_to_hip,20.32,20.955,21.59',
    );
    expectSameMeaning(cm, canonical);
  });
});

describe('one size a row', () => {
  it.each([
    ['sizes first', 'size,waist,hip,waist to hip\n8,25,34.5,8\n10,26.5,36,8.25\n12,28,38,8.5'],
    ['no corner', ',waist,hip,waist to hip\n8,25,34.5,8\n10,26.5,36,8.25\n12,28,38,8.5'],
    ['size last', 'waist,hip,hip depth,Size\n25,34.5,8,8\n26.5,36,8.25,10\n28,38,8.5,12'],
    [
      'units below',
      'Size,Waist,Hip,Hip depth\n,in,in,in\n8,25,34.5,8\n10,26.5,36,8.25\n12,28,38,8.5',
    ],
    [
      'titles and empty columns',
      'Waist and hips, misses\n\n,,\n,,,Size,Waist,Hips,,Hip drop\n,,,8,25,34½,,8\n\n,,,10,26½,36,,8¼\n,,,12,28,38,,8½',
    ],
  ])('is read the same: %s', (_, text) => {
    const chart = readChart(`# unit: in\n${text}`, 'rows.csv');
    expect(meaning(chart)).toEqual(meaning(canonical));
    expect(chart.layout).toBe('size-rows');
  });

  it('knows the place of each cell', () => {
    const chart = chartOf('# unit: in', 'size,waist,hip', '8,25,34.5', '', '10,26.5,36');
    expect(findRow(chart, 'hip_girth')?.places).toEqual([
      { row: 3, column: 3 },
      { row: 5, column: 3 },
    ]);
  });
});

describe('sizes from large to small', () => {
  it('are turned with all they have', () => {
    const chart = chartOf(
      '# unit: in',
      'measurement,12,10,8',
      'waist_girth,28,26.5,25',
      'hip_girth,38,36,34.5',
      'waist_to_hip,8.5,8.25,8',
    );
    expect(meaning(chart)).toEqual(meaning(canonical));
    expect(chart.largestFirst).toBe(true);
    expect(chart.rows[0]?.cells).toEqual(['25', '26.5', '28']);
    expect(chart.rows[0]?.places[0]).toEqual({ row: 3, column: 4 });
  });

  it('are not turned where first and last are alike', () => {
    const chart = chartOf('# unit: cm', 'size,A,B', 'waist,70,70', 'hip,96,96');
    expect([chart.largestFirst, chart.sizes]).toEqual([false, ['A', 'B']]);
  });
});

describe('rows that are not needed', () => {
  const chart = chartOf(
    '# unit: cm',
    'measurement,S,M,L',
    'n,12,,-3',
    'Girths,,,',
    'waist,66,70,76',
    'hip,92,96,102',
    'high hip,80,,abc',
    'Upper arm (in),10,10½,11 in',
    'Fabric,wool,"cotton, red",',
    'Hand-drawn 2024',
  );

  it('are kept where they are unknown', () => {
    expect(chart.rows.map(({ name, known }) => [name, known])).toEqual([
      ['n', false],
      ['waist_girth', true],
      ['hip_girth', true],
      ['high_hip_girth', true],
      ['upper_arm', false],
      ['fabric', false],
    ]);
    expect(chart.comments.map(({ text }) => text)).toEqual(['Girths', 'Hand-drawn 2024']);
    expect(findRow(chart, 'n')?.values).toEqual([120, null, -30]);
    expect(findRow(chart, 'upper_arm')?.values).toEqual([254, 266.7, 279.4]);
    expect(findRow(chart, 'fabric')?.cells).toEqual(['wool', 'cotton, red', '']);
  });

  it('have null for what is no length', () => {
    expect(findRow(chart, 'high_hip_girth')).toMatchObject({
      values: [800, null, null],
      cells: ['80', '', 'abc'],
    });
  });
});

describe('charts out in the world', () => {
  it.each([
    ['astm-d5585-95-misses', 10],
    ['astm-d6960-04-plus', 10],
    ['astm-d6960-16-plus', 14],
    ['en-13402-3-women', 16],
    ['home-pattern-misses-1968', 8],
    ['survey-ansur-1988-women-by-hip', 8],
  ])('%s is read', (name, sizes) => {
    const file = new URL(`../../size-charts/standards/${name}.csv`, import.meta.url);
    const chart = readChart(readFileSync(file, 'utf8'), name);
    expect(chart.sizes).toHaveLength(sizes);
    expect(chart.largestFirst).toBe(false);
  });

  it('reads a chart pasted from a spreadsheet in another language', () => {
    const chart = readChart(
      '\uFEFFRok, wiosna;;;;;\r\n;;;;;\r\n;Wymiar;34;36;38;\r\n;Waist (cm);"64,5";68;72;\r\n' +
        ';Hips (cm);90;94,5;98\u00A0;\r\n;Uwagi;;;;\r\n;;;;;\r\n;;;;;',
      'rok.csv',
    );
    expect(chart).toMatchObject({ unit: 'cm', sizes: ['34', '36', '38'] });
    expect(findRow(chart, 'waist_girth')?.values).toEqual([645, 680, 720]);
    expect(findRow(chart, 'hip_girth')?.values).toEqual([900, 945, 980]);
  });

  it('reads uneven rows, section headings and several names for the sizes', () => {
    const chart = chartOf(
      'Fit guide',
      ',,US size,0,2,4',
      ',,UK size,4,6,8',
      'Girths,,Waist (in),24 1/2",25 1/2",26 1/2"',
      ',,Hip (in),35½″,36½″,37½″,,,',
      'Lengths,,Waist to hip (in),8',
    );
    expect(chart).toMatchObject({ unit: 'in', sizes: ['0', '2', '4'] });
    expect(chart.rows.map(({ name }) => name)).toEqual([
      ...['uk_size', 'waist_girth', 'hip_girth', 'waist_to_hip'],
    ]);
    expect(findRow(chart, 'waist_to_hip')?.values).toEqual([203.2, null, null]);
  });

  it('is fast where blanks and commas are many in one line', () => {
    const many = ' , '.repeat(50_000);
    // As long as cells and lines may be.
    const odd = `"${'in '.repeat(666)}",${'1'.repeat(1_999)}x,${'_'.repeat(2_000)}`;
    const chart = readChart(`# a ${many} b\n${CANONICAL}${odd}\n${many}`, 'long.csv');
    expect(chart.rows).toHaveLength(4);
  });

  it('is fast where there are a hundred thousand rows of nothing', () => {
    const nothing = ['\n', ',,,,,,,\n', ' , ,\t\n', '"","",""\n'].join('').repeat(25_000);
    const chart = readChart(`${nothing}${CANONICAL}${nothing}`, 'blank.csv');
    expect(meaning(chart)).toEqual(meaning(canonical));
    expect(chart.rows[0]?.places[0]).toEqual({ row: 100_003, column: 2 });
  });
});
