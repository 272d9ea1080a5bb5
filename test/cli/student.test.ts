import { readFileSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DIFFICULTIES } from '../../src/study/exercise/lessons';
import { LONG, some, someSizes } from '../samples';
import { chartText } from '../skirts';
import { workplace, typed } from './workplace';

const place = workplace();
const DEMO = resolve('size-charts/demo.csv');

const HEADER = 'piece,point,size,dx_in,dy_in';

function marked(sheet: string, ...more: readonly string[]) {
  place.write('sheet.csv', sheet);
  return place.run('assess', DEMO, 'sheet.csv', '--style', 'pencil', '--base', '12', ...more);
}

describe('assess', () => {
  it('gives the rules of the engine full marks', async () => {
    const sizes = ['10', '12', '16', '22'];
    const chart = chartText(
      'in',
      {
        waist_girth: [29, 31, 34.5, 43],
        hip_girth: [40, 41.5, 45, 53],
        waist_to_hip: [8, 8.25, 8.5, 9],
        skirt_length: [23, 23.5, 24, 24.5],
      },
      sizes,
    );
    place.write('four.csv', chart);
    for (const [style, zero] of [
      ['pencil', 'side_hip'],
      ['shared-a-line', 'center_hem'],
      ...(LONG ? [['shared-drop', 'center_waist'] as const] : []),
    ] as const) {
      await place.run(
        ...typed('grade four.csv --base 12 --style'),
        style,
        '--stack',
        zero,
        '--out',
        'graded',
      );
      const { status, stdout } = await place.run(
        ...typed('assess four.csv graded/grade-rules.csv --base 12 --style'),
        style,
      );
      expect(stdout).toContain('Score: 100 of 100');
      expect(stdout).toContain(`front ${zero}`);
      expect(status).toBe(0);
    }
  });

  it('names wrong points as in graded-points.csv, the slip, and what becomes of the garment', async () => {
    const sizes = ['2', '4', '6', '8', '10', '14', '16', '18', '20', '22', '24'];
    // The whole hip step at the side of the front, from the chart by hand.
    const hip = [-6, -5, -4, -3, -1.5, 1.5, 3.5, 5.5, 7.5, 9.75, 12];
    const rows = sizes.map(
      (size, i) => `front,side_hip,${size},${hip[i] ?? 0},${(Number(size) - 12) / 32}`,
    );
    const { status, stdout } = await marked(
      [HEADER, ...rows, ''].join('\n'),
      '--pieces',
      'front',
      '--fractions',
    );
    expect(status).toBe(1);
    expect(stdout).toContain('whole step instead of a quarter');
    expect(stdout).toContain('front.side_hip dx, by the rule 1/4 hip_girth');
    expect(stdout).toMatch(/^The finished hip is off in 2, 4, .*at worst/m);
    expect(stdout).toContain('side seams no longer match');
    // Two quarters of 12 in less a quarter of it too wide.
    expect(stdout).toMatch(/^24 .* 73 1\/2 +55 1\/2 +18$/m);
  });

  it.each([
    [
      'an unknown point',
      `${HEADER}\nfront,knee,14,1,0\n`,
      /sheet\.csv, row 2, column 2: .*no such point in style pencil.*Got: knee/,
    ],
    [
      'an unknown piece',
      `${HEADER}\nsleeve,side_hip,14,1,0\n`,
      /row 2, column 1: .*no such piece.*Got: sleeve/,
    ],
    [
      'an unknown size',
      `${HEADER}\nfront,side_hip,15,1,0\n`,
      /row 2, column 3: .*no such size.*Got: 15/,
    ],
    ['no size', `${HEADER}\nfront,side_hip,,1,0\n`, /row 2, column 3: .*does not say its size/],
    [
      'text in a number',
      `${HEADER}\nfront,side_hip,14,a lot,0\n`,
      /row 2, column 4.*not a number.*Got: a lot/,
    ],
    ['a cell twice', `${HEADER}\nfront,side_hip,14,1,0\nfront,side_hip,14,1,0\n`, /row 3.*twice/],
    [
      'no unit',
      'piece,point,size,dx,dy\nfront,side_hip,14,1,0\n',
      /sheet\.csv: .*does not say its unit/,
    ],
    [
      'two units',
      'piece,point,size,dx_in,dy_cm\nfront,side_hip,14,1,0\n',
      /two units, inches and centimeters/,
    ],
    ['no header', 'front,side_hip,14,1,0\n', /row 1, column 1: a column is not known.*Got: front/],
    ['nothing', '', /no rules/],
    ['no rules', `${HEADER}\n`, /no rules/],
    [
      'a formula of what the chart does not have',
      `${HEADER}\nfront,side_hip,14,1/4 thigh_girth,0\n`,
      /row 2, column 4 .*no row "thigh_girth"/,
    ],
    [
      'a rule that is not there',
      'rule,point,dx_in\nwide,front.side_hip,\n',
      /row 2, column 1: .*no rule of this name.*Got: wide/,
    ],
    ['a misspelled column', 'point,size,dxx_in\nfront.side_hip,14,1\n', /row 1, column 3.*dxx/],
    [
      'an unknown size of a column',
      '# unit: in\npoint,axis,15\nfront.side_hip,dx,1\n',
      /row 2, column 3: .*no such size.*Got: 15/,
    ],
    [
      'an unknown direction',
      `# y: sideways\n${HEADER}\nfront,side_hip,14,1,0\n`,
      /row 1: .*down or up/,
    ],
    ['an unknown axis', 'point,axis,14\nfront.side_hip,slanted,1\n', /row 2, column 2.*axis/],
    [
      'an unknown zero',
      `# zero: knee\n${HEADER}\nfront,side_hip,14,1,0\n`,
      /sheet\.csv.*zero.*Got: knee/,
    ],
  ])('refuses %s with its place', async (_, sheet, message) => {
    const { status, stdout, stderr } = await marked(sheet);
    expect(stderr.replace(/\n/g, ' ')).toMatch(message);
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
  });

  it('refuses a tolerance that hides everything', async () => {
    expect((await marked(`${HEADER}\nfront,side_hip,14,1,0\n`, '--tolerance', '1in')).status).toBe(
      2,
    );
  });
});

describe('the way of a student', () => {
  it('leads from an exercise over the marks to the explanation', async () => {
    expect(
      (await place.run('exercise', '--seed', '7', '--difficulty', 'apart', '--out', 'seven'))
        .status,
    ).toBe(0);
    const written = (folder: string) =>
      readdirSync(join(place.path, folder)).filter((name) => !name.startsWith('.'));
    expect(written('seven')).toEqual(['chart.csv', 'sheet.csv', 'skirt.csv']);
    const made = await place.run(
      ...typed('exercise --seed 7 --difficulty apart --key --out answers'),
    );
    expect(made.status).toBe(0);
    expect(written('answers')).toEqual(['key.csv']);
    const key = place.read('answers/key.csv');
    const base = /# base: (\S+)/.exec(key)?.[1] ?? '';
    const mark = (sheet: string) =>
      place.run('assess', 'seven/chart.csv', sheet, '--style', 'pencil', '--base', base);
    expect((await mark('answers/key.csv')).status).toBe(0);
    expect((await mark('seven/sheet.csv')).stdout).toMatch(
      /^Not judged: 112 of 112 cells are blank\.$/m,
    );
    const explained = await place.run(
      ...typed('explain seven/chart.csv front.side_waist --base'),
      base,
      '--out',
      'ladder.svg',
    );
    expect(explained.status).toBe(0);
    expect(place.read('ladder.svg')).toContain('front.side_waist');
    const inferred = await place.run('infer', 'answers/key.csv');
    expect(inferred.stdout).toContain('The cells agree with one another');
  });
});

describe('every exercise', () => {
  it.each(some(DIFFICULTIES))('%s is assessed by its sheet alone', async (difficulty) => {
    const make = (...more: readonly string[]) =>
      place.run('exercise', '--seed', '3', '--difficulty', difficulty, ...more);
    expect((await make('--out', difficulty)).stdout).not.toContain('The slip');
    const key = await make('--key', '--out', `${difficulty}-key`);
    expect(key.stdout.includes('The slip of the sheet is in')).toBe(difficulty === 'slip');
    place.write(`${difficulty}/mine.csv`, place.read(`${difficulty}-key/key.csv`));
    const right = await place.run('assess', `${difficulty}/mine.csv`);
    expect(right.stdout).toContain('Score: 100 of 100');
    expect(right.stdout).not.toContain('Not read');
    expect(right.status).toBe(0);
    const handed = await place.run('assess', `${difficulty}/sheet.csv`);
    expect(handed.status).toBe(1);
    expect(handed.stdout).toMatch(difficulty === 'slip' ? /1 slip explains/ : /^Not judged/m);
  });
});

describe('the terminal of a student', async () => {
  place.write(
    'bad.csv',
    `${HEADER}\n${['14', '16', '24'].map((size) => `front,side_waist,${size},4,-3`).join('\n')}\n`,
  );
  place.write('few.csv', someSizes(readFileSync(DEMO, 'utf8'), ['10', '12', '14', '16']));
  await place.run(...typed('grade few.csv --base 12 --style shared-pencil --out trued'));
  const calls: readonly (readonly string[])[] = [
    ['assess', '--help'],
    ['explain', '--help'],
    ['infer', '--help'],
    ['exercise', '--help'],
    ['assess', DEMO, 'bad.csv', '--base', '12'],
    ['assess', DEMO, 'bad.csv', '--base', '12', '--fractions'],
    ['explain', DEMO, '--base', '12'],
    ['explain', DEMO, '--base', '12', '--style', 'shared-pencil'],
    ['explain', DEMO, 'front.side_waist_handle', '--base', '12'],
    ['explain', DEMO, 'back.outer_dart_tip', '--base', '12', '--style', 'shared-drop'],
    ['explain', DEMO, 'front.side_hip', '--base', '24', '--unit', 'cm'],
    typed('infer bad.csv --base 12 --unit mm'),
    typed('infer trued/grade-rules.csv --base 12 --style shared-pencil'),
    typed('exercise --seed 1 --out one'),
  ];

  it.each(calls)('shows %s %s at 80 columns without color', async (...args) => {
    const { status, stdout } = await place.run(...args.filter((arg) => arg !== undefined));
    expect([0, 1]).toContain(status);
    expect(stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
    expect(stdout).not.toContain('\u001b');
  });
});
