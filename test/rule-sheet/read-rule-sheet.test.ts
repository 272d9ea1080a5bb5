import { describe, expect, it } from 'vitest';
import { parseMove } from '../../src/rule-sheet/parse-move';
import { readRuleSheet } from '../../src/rule-sheet/read-rule-sheet';
import { inferIncrements } from '../../src/study/infer/infer-increments';
import { markSheet } from '../../src/study/mark/mark-sheet';
import { chartText } from '../skirts';

// motley-muse.com, skirt grading: waist and hip 1 in, length 1/4 in a size; a quarter of a girth
// step for each panel: Threads no. 101, fashion-incubator.com. Half of it for the dart: common
// practice, no source. The published table counts y upward.
const CHART = chartText(
  'in',
  {
    waist_girth: [26, 27, 28, 29],
    hip_girth: [36, 37, 38, 39],
    skirt_length: [25, 25.25, 25.5, 25.75],
  },
  ['10', '12', '14', '16'],
);

const marked = (sheet: string) => markSheet({ chart: CHART, base: '12', sheet, pieces: ['front'] });

/** The published grade in the habits of the trade, each with the zero at the center of the waist. */
const HABITS: Readonly<Record<string, string>> = {
  'a step that holds in every size': `# unit: in
# sizes: 10, 12, 14, 16
# base: 12
piece,point,step_dx,step_dy
front,center_waist,0,0
front,dart_inner,1/8,0
front,dart_tip,1/8,0
front,dart_outer,1/8,0
front,side_waist,1/4,0
front,side_hip,1/4,0
front,side_hem,+1/4,+1/4
front,center_hem,0,1/4
`,
  'named rules': `Rules of the front
# sizes: 10, 12, 14, 16
# base: 12
rule,point,size,step_dx_in,step_dy_in,note
still,,,0,0,of nothing that grows
dart,,,1/8,0
side,,,1/4,0
still,front.center_waist
dart,front.dart_inner
dart,front.dart_tip
dart,front.dart_outer
side,front.side_waist
side,front.side_hip
,front.side_hem,,1/4,1/4
,front.center_hem,,0,1/4
`,
  'moves by named rules, y up': `# unit: in
# y: up
# base: 12
rule,piece,point,size,dx,dy
side,,,10,-1/4,0
side,,,14,1/4,0
side,,,16,2/4,0
dart,,,10,-1/8,0
dart,,,14,1/8,0
dart,,,16,1/4,0
,front,center_waist,,0,0
dart,front,dart_inner
dart,front,dart_tip
dart,front,dart_outer
side,front,side_waist
side,front,side_hip
,front,side_hem,10,-1/4,1/4
,front,side_hem,14,1/4,-1/4
,front,side_hem,16,1/2,-1/2
,front,center_hem,10,0,1/4
,front,center_hem,14,0,-1/4
,front,center_hem,16,0,-1/2
`,
};

describe('a sheet in the habits of the trade', () => {
  it.each(Object.entries(HABITS))('with %s is right', (_, sheet) => {
    const { cells } = marked(sheet);
    expect(cells.filter(({ verdict }) => verdict !== 'right')).toEqual([]);
    expect(cells).toHaveLength(8 * 2 * 3);
  });

  it.each(Object.entries(HABITS))('with %s shows one slip where there is one', (_, sheet) => {
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

  it.each(Object.entries(HABITS))('with %s implies the steps of the chart', (_, sheet) => {
    const { base, measurements, sizes } = inferIncrements({ sheet });
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

  it('may hold formulas of what the chart grows by', () => {
    const sheet = (share: string) => `point,size,dx_in,dy_in,rule_x
front.side_waist,,1/4 waist_girth,0,
front.side_hip,,,,${share} hip_girth
front.side_hem,14,1/4 hip_girth,skirt_length - 0*hip_girth,
`;
    expect(marked(sheet('1/4')).cells.filter(({ verdict }) => verdict === 'wrong')).toEqual([]);
    expect(marked(sheet('1/2')).diagnosis.found.map(({ slip }) => slip.id)).toEqual(['half']);
    expect(() => inferIncrements({ sheet: sheet('1/4'), base: '12' })).toThrow(
      expect.objectContaining({ code: 'measurement-missing' }),
    );
  });

  it('may not have a move for all sizes, nor a size beside all of them', () => {
    for (const [sheet, code] of [
      ['point,size,dx_in\nfront.side_hip,,1\n', 'size-missing'],
      ['point,size,step_dx_in\nfront.side_hip,,1\nfront.side_hip,14,1\n', 'rule-twice'],
      ['point,size,step_dx_in\nfront.side_hip,14,1\nfront.side_hip,,1\n', 'rule-twice'],
    ] as const)
      expect(() => readRuleSheet(sheet, 'sheet')).toThrow(expect.objectContaining({ code }));
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
