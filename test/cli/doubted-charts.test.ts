/** Charts with a number that is wrong but may pass for one, as a call refuses or names them. */
import { describe, expect, it } from 'vitest';
import { workplace } from './workplace';

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

const check = () => place.run('check', 'chart.csv', '--unit', 'in');

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
