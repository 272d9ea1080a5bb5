/** Charts with a number that is wrong but may pass for one, as a call refuses or names them. */
import { describe, expect, it } from 'vitest';
import { workplace, typed } from './workplace';

const place = workplace();

/** Inventions of our own, near EN 13402-3 and the usual misses sizes. */
const CM = {
  waist_girth: '68,72,76,80,84',
  hip_girth: '94,98,102,106,110',
};
const IN = {
  waist_girth: '27,28,29.5,31,32.5',
  hip_girth: '37,38,39.5,41,42.5',
};
const SIZES = '36,38,40,42,44';

function write(unit: string, rows: Readonly<Record<string, string>>, sizes = SIZES): void {
  const lines = Object.entries(rows).map(([name, cells]) => `${name},${cells}`);
  place.write('chart.csv', [`# unit: ${unit}`, `measurement,${sizes}`, ...lines, ''].join('\n'));
}

const grade = (base = '40') => place.run('grade', 'chart.csv', '--base', base, '--replace');

describe('a row in another unit than its chart', () => {
  // 1 in = 2.54 cm exactly (the international inch), by hand: 27 in is 68.58 cm.
  it.each([
    ['cm', { ...CM, waist_girth: '27,28.5,30,31.5,33' }, 'waist_girth', '68.58 cm, which is 27 in'],
    ['cm', { ...CM, hip_girth: '36,37.5,39,40.5,42' }, 'hip_girth', '91.44 cm, which is 36 in'],
    ['in', { ...IN, waist_girth: '68,72,76,80,84' }, 'waist_girth', '28.35 in, which is 72 cm'],
    ['in', { ...IN, hip_girth: '94,98,102,106,110' }, 'hip_girth', '37.01 in, which is 94 cm'],
    ['cm', { ...CM, knee_girth: '14,14,14.5,15,15.5' }, 'knee_girth', '35.56 cm, which is 14 in'],
    ['cm', { ...CM, thigh_girth: '22,22,22,23,23' }, 'thigh_girth', '55.88 cm, which is 22 in'],
    [
      'cm',
      { ...CM, high_hip_girth: '35,36,37,38,39' },
      'high_hip_girth',
      '88.9 cm, which is 35 in',
    ],
    ['cm', { ...CM, knee_girth: '360,365,370,375,380' }, 'knee_girth', '36 cm, which is 360 mm'],
    ['cm', { ...CM, skirt_length: '24,24,24,24,24' }, 'skirt_length', '60.96 cm, which is 24 in'],
    ['in', { ...IN, skirt_length: '60,60,60,60,60' }, 'skirt_length', '23.62 in, which is 60 cm'],
    ['cm', { ...CM, waist_to_hip: '8,8,8,8,8' }, 'waist_to_hip', '20.32 cm, which is 8 in'],
    [
      'mm',
      { waist_girth: '680,720,760,800,840', hip_girth: '94,98,102,106,110' },
      'hip_girth',
      '940 mm, which is 94 cm',
    ],
  ])('%s: %o is refused with what was meant', async (unit, rows, row, meant) => {
    write(unit, rows);
    const { status, stderr } = await grade();
    expect(stderr).toContain(`(did you mean ${meant}?)`);
    expect(stderr).toContain(`row ${row}`);
    expect(status).toBe(2);
  });

  it.each([
    ['a teen', 'cm', '56,58,60,62,64', '80,83,86,89,92'],
    ['plus sizes', 'in', '50,54,58,62,66', '58,62,66,70,74'],
    ['petite bodies', 'in', '22,23,24,25,26', '32,33,34,35,36'],
  ])('the girths of %s are no other unit', async (_, unit, waist_girth, hip_girth) => {
    write(unit, { waist_girth, hip_girth });
    expect((await grade()).status).toBe(0);
  });
});

const check = () => place.run('check', 'chart.csv', '--unit', 'in', '--verbose');

describe('a size that the tables which agree never saw', () => {
  it('is warned of by a table that covers it, and as a step that leaps', async () => {
    // US home-pattern misses sizing of 1968 ends at a waist of 34 in, ASTM D6960-04 does not.
    const waist_girth = '30,32,34,36,38';
    write('in', { waist_girth, hip_girth: '40,42,44,46,54' }, '18,20,22,24,26');
    const { stdout } = await check();
    expect(stdout).toMatch(/warning range-against-standard \(size 20-26, astm-d6960-04\)/u);
    expect(stdout).toMatch(/warning leaping-step \(size 24-26, hip_girth\)/u);
    expect(stdout.replace(/\s+/gu, ' ')).toContain(
      'the hip grows 8 in, from 46 in to 54 in, while no other step of it is above 2 in',
    );
  });

  it('is warned of in the waist as well', async () => {
    write('in', { waist_girth: '26,27,28,29,35', hip_girth: '36,37,38,39,40' }, '8,10,12,14,16');
    const { stdout } = await check();
    expect(stdout).toMatch(/warning range-against-standard \(size 8-16, astm-d5585-95\)/u);
    expect(stdout).toMatch(/warning leaping-step \(size 14-16, waist_girth\)/u);
  });

  it('leaves a chart alone whose steps double at a break, as the usual ones do', async () => {
    write('in', { waist_girth: '24,25,26,28,30', hip_girth: '34,35,36,38,40' }, '4,6,8,10,12');
    expect((await check()).stdout).toContain('0 warning');
  });
});

describe('a row that goes the wrong way, or nowhere', () => {
  it.each([
    ['skirt_length', '64,62,60,58,56'],
    ['waist_to_hip', '23,22.5,22,21.5,21'],
    ['stature', '176,174,172,170,168'],
  ])('%s that falls in every step is warned of by name', async (name, cells) => {
    write('cm', { ...CM, [name]: cells });
    const { stdout } = await place.run('check', 'chart.csv', '--verbose');
    expect(stdout).toMatch(new RegExp(`warning length-falls \\(size 36-44, ${name}\\)`, 'u'));
    const [first, last] = [cells.split(',')[0], cells.split(',').at(-1)];
    expect(stdout.replace(/\s+/gu, ' ')).toContain(`from ${first} cm at 36 to ${last} cm at 44`);
  });

  it.each([
    ['skirt_length', '64,64,63,63,62'],
    ['crotch_height', '78,77.5,77,76.5,76'],
  ])('%s may stay or fall now and then', async (name, cells) => {
    write('cm', { ...CM, [name]: cells });
    expect((await place.run('check', 'chart.csv', '--verbose')).stdout).not.toContain(
      'length-falls',
    );
  });

  it('is told of as a range in which nothing grows', async () => {
    write('in', { waist_girth: '28,28,28', hip_girth: '38,38,38' }, '8,10,12');
    const { stdout } = await check();
    expect(stdout).toMatch(/warning nothing-grows \(size 8-12/u);
    expect(stdout.replace(/\s+/gu, ' ')).toContain('the waist is 28 in and the hip 38 in');
    write('in', { waist_girth: '28', hip_girth: '38' }, '10');
    expect((await check()).stdout).not.toContain('nothing-grows');
  });

  it('is not called a list from large to small where the names of the sizes rise', async () => {
    write('in', { waist_girth: '30,28,26', hip_girth: '40,38,36' }, '8,10,12');
    const { status, stdout } = await check();
    expect(status).toBe(1);
    expect(stdout).not.toContain('from large to small');
    expect(stdout.replace(/\s+/gu, ' ')).toContain('fall as its size names rise');
    write('in', { waist_girth: '30,28,26', hip_girth: '40,38,36' }, '12,10,8');
    expect((await check()).stdout).toContain('from large to small');
  });
});

describe('a cell that jumps away from a steady row and back again', () => {
  it.each([
    ['stature', '168,168,186,168,168', '168'],
    ['skirt_length', '60,60,50,60,60', 'about 60 cm'],
    ['waist_to_hip', '20,20.5,12,21.5,22', '21'],
    ['knee_girth', '36,36.5,73,37.5,38', '37'],
  ])('%s: %s is refused', async (name, cells, meant) => {
    write('cm', { ...CM, [name]: cells });
    const { status, stderr } = await grade();
    expect(stderr).toContain(`column 4 (${name}, size 40)`);
    expect(stderr).toContain(meant);
    expect(status).toBe(2);
  });

  it.each([
    ['two lengths of a skirt', SIZES, 'skirt_length', '60,60,60,70,70'],
    ['heights of two kinds in turn', SIZES, 'stature', '160,172,160,172,160'],
    ['three statures a size', '8P,8R,8T,10P,10R', 'stature', '157,165,173,157,165'],
    ['an uneven girth that rises', SIZES, 'waist_girth', '66,68,75,77,84'],
    ['a depth rounded to half an inch', SIZES, 'waist_to_high_hip', '10,10,11.3,10,10'],
    ['half sizes', '12.5,14.5,16.5,18.5,20.5', 'hip_girth', '94,97,102,107,109'],
  ])('%s is left alone', async (_, sizes, name, cells) => {
    write('cm', { ...CM, [name]: cells }, sizes);
    const { status } = await place.run('check', 'chart.csv', '--verbose');
    expect(status).toBe(0);
  });
});

describe('what would be passed over in silence', () => {
  it.each(['7;2', '7:2', '7_2'])('is refused: %s in a row that is not needed', async (cell) => {
    write('in', { ...IN, waist_to_hip: `7.5,7.5,${cell},8,8` });
    const { status, stderr } = await grade();
    expect(stderr).toContain('column 4 (waist_to_hip, size 40)');
    expect(stderr).toContain(`Got: ${cell}`);
    expect(status).toBe(2);
  });

  it('is refused: how to print, without a paper to print on', async () => {
    write('in', IN);
    const call = typed('grade chart.csv --base 40 --style pencil --replace');
    for (const [option, value] of [
      ['--margin', '10mm'],
      ['--join', 'butt'],
    ] as const) {
      const { status, stderr } = await place.run(...call, option, value);
      expect(stderr).toContain(option);
      expect(stderr).toContain('--paper');
      expect(status).toBe(2);
    }
    expect((await place.run(...call, '--paper', 'a0', '--margin', '10mm')).status).toBe(0);
    expect(
      (await place.run(...typed('print chart.csv --base 40 --style pencil --margin 10mm'))).status,
    ).toBe(0);
  });
});
