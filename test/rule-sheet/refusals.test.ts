import { describe, expect, it } from 'vitest';
import type { InputErrorCode, Place } from '../../src/errors';
import { gradePattern } from '../../src/jobs/grade-pattern';
import { inferIncrements } from '../../src/study/infer/infer-increments';
import { markSheet } from '../../src/study/mark/mark-sheet';
import { FRONT, move } from '../given/sheets';
import { expectRefusal } from '../expect-refusal';
import { chartText } from '../skirts';

const CHART = chartText('in', { waist_girth: [26, 27, 28], hip_girth: [36, 37, 38] }, [
  ...['10', '12', '14'],
]);

const file = 'sheet.csv';

const grade = (sheet: string, pattern = FRONT) =>
  gradePattern({ pattern: { text: pattern, file: 'base.csv' }, rules: { text: sheet, file } });
const mark = (sheet: string) => markSheet({ chart: CHART, base: '12', sheet, sheetFile: file });
const infer = (sheet: string) => inferIncrements({ sheet, file });

/** Every sheet says its unit, its sizes and its base in three lines, so that rows count from 4. */
const stated = (text: string) => `# unit: in\n# sizes: 10, 12, 14\n# base: 12\n${text}`;

type Case = readonly [name: string, sheet: string, code: InputErrorCode, place: Place];

const UNREADABLE: readonly Case[] = [
  [
    'two named rules on one point',
    'rule,point,step_dx\nwide,,1/4\nnarrow,,1/8\nwide,front.side_hip\nnarrow,front.side_hip\n',
    'rule-twice',
    { row: 8, column: 1, point: 'front.side_hip' },
  ],
  [
    'a named rule and a row of its own',
    'rule,point,step_dx\nwide,,1/4\n,Front.Side hip,1/8\nwide,front.side_hip\n',
    'rule-twice',
    { row: 7, column: 1, point: 'front.side_hip' },
  ],
  [
    'a named rule and numbers in one row',
    'rule,point,step_dx\nwide,,1/4\nwide,front.side_hip,1/8\n',
    'rule-twice',
    { row: 6, column: 3 },
  ],
  [
    'one rule defined twice',
    'rule,point,step_dx\nwide,,1/4\nwide,,1/8\nwide,front.side_hip\n',
    'rule-twice',
    { row: 6, column: 3 },
  ],
  [
    'one number twice, under two spellings',
    'point,axis,10,12,14\nfront.side_hip,x,-1/4,0,1/4\nFRONT.SIDE-HIP,dx,-1/4,0,1/4\n',
    'rule-twice',
    { row: 6, column: 3, size: '10', point: 'front.side_hip' },
  ],
  [
    'a size beside all of them',
    'point,size,step_dx\nfront.side_hip,,1\nfront.side_hip,14,1\n',
    'rule-twice',
    { row: 6, column: 3, size: '14', point: 'front.side_hip' },
  ],
  [
    'all sizes beside one of them',
    'point,size,step_dx\nfront.side_hip,14,1\nfront.side_hip,,1\n',
    'rule-twice',
    { row: 6, column: 3, point: 'front.side_hip' },
  ],
  [
    'a move for all sizes',
    'point,size,dx\nfront.side_hip,,1\n',
    'size-missing',
    { row: 5, column: 2 },
  ],
  [
    'a move and no column of sizes',
    'point,dx\nfront.side_hip,1\n',
    'size-missing',
    { row: 5, column: 2 },
  ],
  [
    'a row that says nothing',
    'point,step_dx\nfront.side_hip,\n',
    'size-missing',
    { row: 5, column: 2 },
  ],
  [
    'a rule that nothing defines',
    'rule,point,step_dx\nwide,front.side_hip\n',
    'rule-unknown',
    { row: 5, column: 1 },
  ],
  [
    'an unknown piece',
    'piece,point,step_dx\nsleeve,side_hip,1\n',
    'piece-unknown',
    { row: 5, column: 1 },
  ],
  [
    'an unknown point',
    'point,axis,10,12,14\nfront.side_hips,x,1,0,1\n',
    'point-unknown',
    { row: 5, column: 1 },
  ],
  ['no piece', 'point,step_dx\nside_hip,1\n', 'sheet-malformed', { row: 5, column: 1 }],
  [
    'an unknown axis',
    'point,axis,10,12,14\nfront.side_hip,z,1,0,1\n',
    'sheet-malformed',
    { row: 5, column: 2 },
  ],
  [
    'an unknown size',
    'point,axis,10,12,13\nfront.side_hip,x,1,0,1\n',
    'size-unknown',
    { row: 4, column: 5 },
  ],
  [
    'a step over a size',
    'point,axis,10-14\nfront.side_hip,x,1\n',
    'size-unknown',
    { row: 4, column: 3 },
  ],
  [
    'a dash of which nothing is said',
    'point,axis,10,12,14\nfront.side_hip,x,1,-,1\n',
    'cell-not-a-number',
    { row: 5, column: 4, size: '12' },
  ],
  [
    'no number',
    'point,axis,10,12,14\nfront.side_hip,x,1,0,one\n',
    'cell-not-a-number',
    { row: 5, column: 5, size: '14' },
  ],
  [
    'another meaning of blanks',
    '# blank: missing\npoint,axis,10,12,14\nfront.side_hip,x,1,0,1\n',
    'bad-option',
    { row: 4 },
  ],
  [
    'decimal commas among commas',
    'point,axis,10,12,14\nfront.side_hip,x,-0,5,0,0,5\n',
    'column-unknown',
    { row: 5, column: 6 },
  ],
  [
    'an unknown column',
    'point,size,step_dx,step_dz\nfront.side_hip,14,1,1\n',
    'column-unknown',
    { row: 4, column: 4 },
  ],
  [
    'sizes down and across',
    'point,axis,size,10,12,14\nfront.side_hip,x,,1,0,1\n',
    'sheet-malformed',
    {},
  ],
  ['two units', 'point,size,dx_cm\nfront.side_hip,14,1\n', 'unit-contradicted', {}],
  [
    'two units of its rows',
    'point,axis,10,12,14\nfront.side_hip,dx_cm,1,0,1\n',
    'unit-contradicted',
    {},
  ],
  [
    'two bases',
    'base: 14\npoint,axis,10,12,14\nfront.side_hip,dx,1,0,1\n',
    'sheet-malformed',
    { row: 4 },
  ],
  ['no rows', 'point,axis,10,12,14\n', 'sheet-malformed', { row: 1 }],
];

describe('a rule sheet that cannot be read', () => {
  it.each(UNREADABLE)('%s', (_, sheet, code, place) => {
    for (const job of [grade, mark, infer])
      expectRefusal(() => job(stated(sheet)), code, { file, ...place });
  });

  it('steps from no base', () => {
    const sheet = '# unit: in\npoint,axis,10-12,12-14\nfront.side_hip,x,1/4,1/4\n';
    expectRefusal(() => infer(sheet), 'base-missing', { file });
    expect(infer(`# base: 14\n${sheet}`).sizes.map(({ label }) => label)).toEqual([
      ...['10', '12', '14'],
    ]);
  });
});

describe('a column that may be a size or a step', () => {
  it.each([
    'S,M,L,X-L',
    'Small,Medium,Large,X-Large',
    'X-S,S,M,L',
    'S,M,L,L-Tall',
    '10,12,14,14-Long',
    '12,14,16,16-18',
    'L,X-L',
    'S,M,S-M',
  ])('is refused beside others, and read where the sheet lists its sizes: %s', (heads) => {
    const labels = heads.split(',');
    const base = labels.find((label) => !label.includes('-')) ?? '';
    const cells = labels.map((label) => (labels.indexOf(label) - labels.indexOf(base)) / 4);
    const sheet = `# unit: in\n# base: ${base}\npoint,axis,${heads}\nfront.side_hip,x,${cells.join()}\n`;
    expectRefusal(() => infer(sheet), 'size-unknown', { file });
    const { sizes } = infer(`# sizes: ${heads}\n${sheet}`);
    expect(sizes.map(({ label }) => label)).toEqual(labels);
  });

  it('is a step where a single plain size stands between steps, as the base may', () => {
    for (const [heads, sizes] of [
      ['S-M,M,M-L,L-XL', ['S', 'M', 'L', 'XL']],
      ['10-12,12,12-14', ['10', '12', '14']],
    ] as const) {
      const [, base = ''] = sizes;
      const sheet = `# unit: in\n# base: ${base}\npoint,axis,${heads}\n`;
      const row = heads.split(',').map((label) => (label === base ? '0' : '1/4'));
      const found = infer(`${sheet}front.side_hip,x,${row.join()}\n`);
      expect(found.sizes.map(({ label }) => label)).toEqual(sizes);
    }
  });
});

describe('a rule sheet that contradicts itself', () => {
  it('or the base that it is used with', () => {
    const sheet = '# unit: in\n# base: 14\npoint,axis,10,12,14\nfront.side_hip,x,-1,-1/2,0\n';
    const place = { file, row: 2 };
    expectRefusal(() => grade(sheet), 'rule-contradicted', place);
    expectRefusal(() => mark(sheet), 'rule-contradicted', place);
    expectRefusal(() => inferIncrements({ sheet, file, base: '12' }), 'rule-contradicted', place);
    expect(infer(sheet).base).toBe('14');
  });

  it('or the chart that it is used with', () => {
    const sheet = '# unit: in\n# sizes: 10, 14\n# base: 14\npoint,step_dx\nfront.side_hip,1/4\n';
    const call = () => markSheet({ chart: CHART, base: '14', sheet, sheetFile: file });
    expectRefusal(call, 'rule-contradicted', { file, row: 2 });
    expect(infer(sheet).sizes.map(({ label }) => label)).toEqual(['10', '14']);
  });

  /** Moves by quarters, each step by quarters, as the engine writes them. */
  const own = `piece,point,size,dx_in,dy_in,step_dx_in,step_dy_in,rule_x,rule_y
front,side_hip,10,-0.25,0,-0.25,0,1/4 hip_girth,0
front,side_hip,12,0,0,0,0,1/4 hip_girth,0
front,side_hip,14,0.333333,0,0.333333,0,1/4 hip_girth,0
`;
  it.each<Case>([
    [
      'by a step that was changed alone',
      own.replace('0.333333,0,1/4', '0.375,0,1/4'),
      'rule-contradicted',
      { row: 7, column: 6, size: '14', point: 'front.side_hip' },
    ],
    [
      'by a move that was changed alone',
      own.replace('10,-0.25', '10,-0.5'),
      'rule-contradicted',
      { row: 5, column: 6, size: '10', point: 'front.side_hip' },
    ],
    [
      'by one step for all sizes beside moves',
      'point,size,dx,step_dx\nfront.side_hip,10,-1/4\nfront.side_hip,14,1/4\nfront.side_hip,,,1/8\n',
      'rule-contradicted',
      { row: 7, column: 4, size: '10', point: 'front.side_hip' },
    ],
    [
      'by a move of the base',
      'point,axis,10,12,14\nfront.side_hip,x,0,1/4,1/2\n',
      'rule-moves-base',
      { row: 5, column: 4, size: '12', point: 'front.side_hip' },
    ],
  ])('%s', (_, sheet, code, place) => {
    for (const job of [grade, infer])
      expectRefusal(() => job(stated(sheet)), code, { file, ...place });
    // Whoever marks wants to see which of the two is wrong.
    expect(mark(stated(sheet)).cells.some(({ verdict }) => verdict === 'wrong')).toBe(true);
  });

  it('names both places', () => {
    const changed = stated(own.replace('10,-0.25', '10,-0.5'));
    expectRefusal(
      () => grade(changed),
      'rule-contradicted',
      { file, row: 5, column: 6, size: '10', point: 'front.side_hip' },
      '-0.5 (row 5, column 4)',
    );
    const twice = 'rule,point,step_dx\nwide,,1/4\nwide,front.side_hip\n,front.side_hip,1\n';
    expectRefusal(
      () => mark(stated(twice)),
      'rule-twice',
      { file, row: 7, column: 3, point: 'front.side_hip' },
      'the rule wide in row 6, column 1',
    );
  });

  it('is read where the two differ by the last digit that is written', () => {
    const result = grade(stated(own.replace('0.333333,0,1/4', '0.333334,0,1/4')));
    expect(move(result, '14', 'front', 'side_hip').x / 25.4).toBeCloseTo(1 / 3, 5);
  });
});

describe('a rule sheet with holes', () => {
  const hole = 'point,axis,10,12,14\nfront.side_hip,x,-1/4,,\nfront.side_hem,x,-1/4,,1/4\n';

  it('grades nothing, marks what is missing, and infers the rest', () => {
    expectRefusal(() => grade(stated(hole)), 'rule-missing', {
      ...{ file, row: 5, size: '14', point: 'front.side_hip' },
    });
    const missing = mark(stated(hole)).cells.filter(
      ({ piece, point, axis, verdict }) =>
        piece === 'front' && point === 'side_hip' && axis === 'x' && verdict === 'missing',
    );
    expect(missing.map(({ size }) => size)).toEqual(['14']);
    expect(infer(stated(hole)).sizes.map(({ residual }) => residual < 1e-9)).toEqual([
      ...[true, true, true],
    ]);
  });

  it('grades them as zero only where it says so', () => {
    const result = grade(stated(`# blank: 0\n${hole}`));
    expect(move(result, '14', 'front', 'side_hip').x).toBe(0);
    const empty = 'point,axis,10,12,14\nfront.side_hip,x,,,\n';
    expectRefusal(() => grade(stated(empty)), 'rule-missing', {
      ...{ file, row: 5, point: 'front.side_hip' },
    });
    expect(move(grade(stated(`# blank: 0\n${empty}`)), '14', 'front', 'side_hip').x).toBe(0);
  });
});

describe('names', () => {
  const pattern = FRONT.replace('dart_in,', 'side-hip,');
  const rule = (point: string) => stated(`point,step_dx\nfront.${point},1/4\n`);

  it('are taken as they stand, and only unlike spellings of one name for each other', () => {
    for (const point of ['side_hip', 'side-hip'])
      expect(move(grade(rule(point), pattern), '14', 'front', point).x).toBeCloseTo(6.35, 9);
    expectRefusal(() => grade(rule('Side Hip'), pattern), 'point-unknown', {
      ...{ file, row: 5, column: 1 },
    });
  });

  it('of rules that the pattern gives go behind rows of the sheet, but not beside them', () => {
    const ruled = FRONT.replace('edge,seam', 'edge,seam,rule').replace(
      'side_hip,9,8,corner,,',
      'side_hip,9,8,corner,,,wide',
    );
    const own = 'rule,point,step_dx\n,front.side_hip,1/8\n';
    expect(move(grade(stated(own), ruled), '14', 'front', 'side_hip').x).toBeCloseTo(3.175, 9);
    expectRefusal(() => grade(stated(`${own}wide,,1/4\n`), ruled), 'rule-twice', {
      ...{ file, row: 5, column: 3, point: 'front.side_hip' },
    });
  });
});

it('sizes with hyphens are sizes where they are known or are the base', () => {
  const sheet = 'point,axis,8-10,10-12,12-14\nfront.side_hip,x,-1/4,0,1/4\n';
  const labels = (text: string) => infer(`# unit: in\n${text}`).sizes.map(({ label }) => label);
  expect(labels(`# base: 10-12\n${sheet}`)).toEqual(['8-10', '10-12', '12-14']);
  expect(labels(`# sizes: 8-10 10-12 12-14\n# base: 10-12\n${sheet}`)).toEqual([
    ...['8-10', '10-12', '12-14'],
  ]);
});

it('sizes are stated one by one, in words as in signs, and numbers in either order', () => {
  const sheet = (sizes: string): string =>
    `# unit: in\n# sizes: ${sizes}\n# base: 12\npoint,step_dx\nfront.side_hip,1/4\n`;
  const labels = (sizes: string) => grade(sheet(sizes)).range.sizes.map(({ label }) => label);
  for (const sizes of ['10, 12, 14 and 16', '10 12 14 & 16', '16; 14; 12; 10'])
    expect(labels(sizes)).toEqual(['10', '12', '14', '16']);
  for (const sizes of ['10 - 16', '10-16', '10 to 16'])
    expectRefusal(() => labels(sizes), 'size-missing', { file, row: 2 }, 'between');
});

it('sizes are smaller and larger by their names, and otherwise as they are stated, unless some fall', () => {
  const pattern = (base: string) => FRONT.replace('# base: 12', `# base: ${base}`);
  const sheet = (sizes: string) =>
    `# unit: in\n# sizes: ${sizes}\npoint,step_dx\nfront.side_hip,1/4\n`;
  // A step that holds in every size: the next larger one is 1/4 in wider.
  for (const [sizes, base, larger] of [
    ['14, 10, 12', '12', '14'],
    ['L, M, S', 'M', 'L'],
    ['3XL, XL, L, 2XL', 'XL', '2XL'],
    ['l, m, s', 'm', 'l'],
    ['16W, 14W', '14W', '16W'],
    ['petite, medium, tall', 'medium', 'tall'],
    ['12, 14, 14W, 16W', '14', '14W'],
  ] as const) {
    const result = grade(sheet(sizes), pattern(base));
    expect(move(result, larger, 'front', 'side_hip').x, sizes).toBeCloseTo(6.35, 9);
  }
  for (const [sizes, base] of [
    ['16W, 14W, 12', '12'],
    ['EU 40, EU 38, M', 'M'],
  ] as const)
    expectRefusal(() => grade(sheet(sizes), pattern(base)), 'sheet-malformed', { file, row: 2 });
});

it('sizes of numbers count up in whatever order they are listed, 00 before 0', () => {
  const sheet = '# unit: in\n# base: 0\npoint,axis,2,00,0\nfront.side_hip,step_dx,1/4,-1/8,0\n';
  const result = grade(sheet, FRONT.replace('base: 12', 'base: 0'));
  expect(result.range.sizes.map(({ label }) => label)).toEqual(['00', '0', '2']);
  expect(infer(sheet).sizes.map(({ label }) => label)).toEqual(['00', '0', '2']);
});

describe('a column that is no size', () => {
  const sheet = (head: string) =>
    `# unit: in\n# base: 12\npoint,axis,10,12,14,${head}\nfront.side_hip,x,-1/4,0,1/4,1/2\n`;

  it.each([
    'total',
    'Tolerance',
    'Source',
    'No.',
    '±',
    'Step',
    'factor',
    'page',
    'checked',
    'range',
    'break',
  ])('%s is refused', (head) => {
    const place = { file, row: 3, column: 6, size: head };
    for (const job of [grade, infer])
      expectRefusal(() => job(sheet(head)), 'size-missing', place, head, 'it names none');
  });

  it('nor is a date, which a spreadsheet made of two sizes', () => {
    for (const job of [grade, infer])
      expectRefusal(
        () => job(sheet('10-Dec')),
        'cell-is-date',
        { file, row: 3, column: 6 },
        '12-10',
      );
  });

  it('while XL and 16 are sizes', () => {
    for (const head of ['16', 'XL', '16W'])
      expect(infer(sheet(head)).sizes.map(({ label }) => label)).toContain(head);
  });
});
