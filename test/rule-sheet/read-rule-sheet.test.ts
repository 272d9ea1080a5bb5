import { describe, expect, it } from 'vitest';
import { gradePattern } from '../../src/jobs/grade-pattern';
import { parseMove } from '../../src/rule-sheet/parse-move';
import { inferIncrements } from '../../src/study/infer/infer-increments';
import { markSheet } from '../../src/study/mark/mark-sheet';
import { toMillimeters } from '../../src/units';
import { expectRefusal } from '../expect-refusal';
import { FRONT, move } from '../given/sheets';
import { EVEN_CHART } from '../published';
import { chartText } from '../skirts';
import { HABITS } from './habits';

// The published table counts y upward.
const marked = (sheet: string) =>
  markSheet({ style: 'pencil', chart: EVEN_CHART, base: '12', sheet, pieces: ['front'] });

/** A pattern in the base size with the points of the drafted front. */
const PATTERN = FRONT.replace('dart_in,', 'dart_inner,').replace('dart_out,', 'dart_outer,');

const graded = (rules: string, chart?: string) =>
  gradePattern({
    pattern: { text: PATTERN, file: 'base.csv' },
    rules: { text: rules, file: 'sheet' },
    ...(chart === undefined ? {} : { chart: { text: chart, file: 'chart.csv' } }),
  });

const CORNER = 'a blank corner, names that stand once, marked sizes and axes in words';

/** Inches a size that the published grade moves each point, y down. */
const STEPS = {
  center_waist: [0, 0],
  dart_inner: [1 / 8, 0],
  dart_tip: [1 / 8, 0],
  dart_outer: [1 / 8, 0],
  side_waist: [1 / 4, 0],
  side_hip: [1 / 4, 0],
  side_hem: [1 / 4, 1 / 4],
  center_hem: [0, 1 / 4],
} as const;

describe('a sheet in the habits of the trade', () => {
  it.each(Object.entries(HABITS))('with %s grades a pattern', (_, sheet) => {
    const result = graded(sheet);
    expect(result.range.sizes.map(({ label }) => label)).toEqual(['10', '12', '14', '16']);
    for (const [point, [dx, dy]] of Object.entries(STEPS))
      ['10', '12', '14', '16'].forEach((size, i) => {
        const { x, y } = move(result, size, 'front', point);
        expect(x, `${point} ${size}`).toBeCloseTo(toMillimeters((i - 1) * dx, 'in'), 9);
        expect(y, `${point} ${size}`).toBeCloseTo(toMillimeters((i - 1) * dy, 'in'), 9);
      });
  });

  const SPELLED = `# unit: in
# base: Size 12
piece,point,axis,Size 10,12.0,US 14,16.00
front,side_hip,x,-1/4,0,1/4,1/2
`;

  it('names the sizes of the chart as a hand or a spreadsheet spells them', () => {
    const result = graded(SPELLED, EVEN_CHART);
    expect(result.range.base).toBe('12');
    for (const [size, dx] of Object.entries({ 10: -0.25, 14: 0.25, 16: 0.5 }))
      expect(move(result, size, 'front', 'side_hip').x).toBeCloseTo(toMillimeters(dx, 'in'), 9);
    const { cells } = marked(SPELLED);
    expect(cells.filter(({ point, axis }) => `${point} ${axis}` === 'side_hip x')).toHaveLength(3);
    // Without a chart the sheet spells them.
    expect(inferIncrements({ style: 'pencil', sheet: SPELLED }).base).toBe('12.0');
  });

  it('tells the marks of sizes as not read, refuses down where y runs up, and carries no name past a rule', () => {
    const { unread } = graded(HABITS[CORNER] ?? '').rules;
    expect(unread.map(({ text }) => text)).toEqual(['(12)', '16*']);
    const up = (HABITS[CORNER] ?? '').replace('# base', '# y: up\n# base');
    const place = { file: 'sheet', row: 7, column: 3 };
    expectRefusal(() => graded(up), 'sheet-malformed', place, 'called down');
    const rule = '# unit: in\n# base: 12\nrule,piece,point,size,dx,dy\n,front,side_hip,14,1,0\n';
    expectRefusal(() => graded(`${rule}side,,,14,1,0\n,,,16,2,0\n`), 'sheet-malformed', {
      ...{ file: 'sheet', row: 6, column: 3 },
    });
  });

  it('is assessed from the base that it states', () => {
    const { reference } = markSheet({ style: 'pencil', chart: EVEN_CHART, sheet: SPELLED });
    expect(reference.grade.range.base).toBe('12');
  });

  it('names no other size: 1.0 is not 10, 10.5 not 105, 010 not 10', () => {
    for (const head of ['1.0', '10.5', '010', 'Sizes 10'])
      expectRefusal(() => graded(SPELLED.replace('Size 10', head), EVEN_CHART), 'size-unknown', {
        file: 'sheet',
        row: 3,
        column: 4,
      });
  });

  it('does not name one size twice in two spellings', () => {
    const twice = SPELLED.replace('16.00', '14.0');
    expectRefusal(() => graded(twice, EVEN_CHART), 'rule-twice', {
      ...{ file: 'sheet', row: 4, column: 7 },
      ...{ size: '14', point: 'front.side_hip' },
    });
  });

  it.each(Object.entries(HABITS))('with %s is right', (_, sheet) => {
    const { cells } = marked(sheet);
    expect(cells.filter(({ verdict }) => verdict !== 'right')).toEqual([]);
    expect(new Set(cells.map(({ point, size, axis }) => `${point} ${size} ${axis}`)).size).toBe(
      8 * 2 * 3,
    );
  });

  it.each(Object.entries(HABITS))('with %s implies the steps of the chart', (_, sheet) => {
    const { base, measurements, sizes } = inferIncrements({ style: 'pencil', sheet });
    expect(base).toBe('12');
    expect(sizes.map(({ label }) => label)).toEqual(['10', '12', '14', '16']);
    for (const [name, step] of [
      ['waist_girth', 1],
      ['hip_girth', 1],
      ['skirt_length', 0.25],
    ] as const)
      expect(
        sizes.map(({ increments }) => (increments[measurements.indexOf(name)] ?? NaN) / 25.4),
      ).toEqual([-step, 0, step, 2 * step].map((inches) => expect.closeTo(inches, 9) as number));
  });

  const named = ['a step that holds in every size', 'named rules', 'moves by named rules, y up'];
  it.each(named)('with %s shows one slip where there is one', (habit) => {
    const sheet = HABITS[habit] ?? '';
    const { cells, diagnosis } = marked(sheet.replace('side,front,side_hip', ''));
    expect(cells.every(({ verdict }) => verdict !== 'wrong')).toBe(true);
    expect(diagnosis.found).toEqual([]);
    const turned = marked(
      sheet.replace(
        /(front[.,]side_hem,(?:10|14|16)?,?)([-+]?)1\/([24])/gu,
        (__, name: string, sign: string, under: string) =>
          `${name}${sign === '-' ? '' : '-'}1/${under}`,
      ),
    );
    expect(turned.diagnosis.found.map(({ slip }) => slip.id)).toEqual(['sign']);
  });

  it('may hold formulas of what the chart grows by', () => {
    const sheet = (share: string) => `point,size,dx_in,dy_in,rule_x
front.side_waist,,1/4 waist_girth,0,
front.side_hip,,,,${share} hip_girth
front.side_hem,14,1/4 hip_girth,skirt_length - 0*hip_girth,
`;
    expect(marked(sheet('1/4')).cells.filter(({ verdict }) => verdict === 'wrong')).toEqual([]);
    expect(marked(sheet('1/2')).diagnosis.found.map(({ slip }) => slip.id)).toEqual(['half']);
    expectRefusal(
      () => inferIncrements({ style: 'pencil', sheet: sheet('1/4'), base: '12' }),
      'measurement-missing',
      { file: 'sheet', row: 2, column: 3, point: 'front.side_waist' },
    );
  });

  it('may count a formula in each step by itself', () => {
    const chart = chartText(
      'in',
      {
        waist_girth: [24, 28, 37, 43],
        hip_girth: [34, 38, 47, 53],
        bust_girth: [32, 36, 45, 51],
      },
      ['10', '12', '14', '16'],
    );
    // A quarter of 4, 9 and 6 in, added up from 9 in: 8, 9, 11.25 and 12.75.
    for (const sheet of [
      `point,size,step_dx\n${['16', '14', '10']
        .map((size) => `front.side_hip,${size},1/4 bust_girth`)
        .join('\n')}\n`,
      'point,step_dx\nfront.side_hip,1/4 bust_girth\n',
      'point,axis,10-12,12-14,14-16\nfront.side_hip,x,1/4 bust_girth,2.25,1/4 bust_girth\n',
      'point,size,dx,step_dx\nfront.side_hip,,1/4 bust_girth,1/4 bust_girth\n',
    ]) {
      const result = graded(sheet, chart);
      const places = ['10', '12', '14', '16'].map(
        (size) => 9 + move(result, size, 'front', 'side_hip').x / 25.4,
      );
      expect(places).toEqual([8, 9, 11.25, 12.75].map((x) => expect.closeTo(x, 9) as number));
    }
    // The quarter method takes a quarter of the hip, which grows by 4, 9 and 6 in as well.
    const cells = markSheet({
      style: 'pencil',
      chart,
      base: '12',
      pieces: ['front'],
      sheet: '# unit: in\npoint,size,step_dx\nfront.side_hip,16,1/4 bust_girth\n',
    }).cells.filter(({ given }) => given !== undefined);
    expect(cells).toMatchObject([
      { verdict: 'right', given: expect.closeTo(1.5 * 25.4, 9) as number },
    ]);
  });
});

it('a move is typed with its sign, as a fraction of any size, with a unit of its own', () => {
  for (const [text, inches] of [
    ['+3/8', 3 / 8],
    ['-9/8', -9 / 8],
    ['\u22121 1/4', -1.25],
    ['½', 0.5],
    ['2.54 cm', 1],
    ['0', 0],
  ] as const)
    expect((parseMove(text, 'in') ?? NaN) / 25.4).toBeCloseTo(inches, 12);
  for (const text of ['', '1/0', '+-1', 'a lot', '1/2/3', '1e3'])
    expect(parseMove(text, 'in')).toBeUndefined();
});
