/** What `coverage` tells and writes. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { chartText } from '../skirts';
import { workplace, typed } from './workplace';

const place = workplace();
const CHART = { waist_girth: [64, 68, 72, 76], hip_girth: [92, 96, 100, 104] };
place.write('chart.csv', chartText('cm', CHART, ['36', '38', '40', '42']));

describe('coverage', () => {
  it('tells shares, whom it leaves out, changes and published tables, within 80 columns', async () => {
    const { status, stdout, stderr } = await place.run('coverage', 'chart.csv');
    expect([status, stderr]).toEqual([0, '']);
    for (const words of [
      'find one of its 4 sizes',
      'Left out',
      'What one change would win',
      'en-13402-3',
    ])
      expect(stdout).toContain(words);
    expect(stdout).toMatch(/nobody's\s+body\s+is\s+wrong/u);
    expect(stdout).toMatch(/normal has too few large\s+bodies/u);
    for (const line of stdout.split('\n')) expect(line.length, line).toBeLessThanOrEqual(80);
    expect(readdirSync(place.path)).toEqual(['chart.csv']);
  });

  it.each([
    ['1,250', 'two ways'],
    ['2 500', 'not a number'],
    ['many', 'not a number'],
  ])(
    'refuses a weight of %s, which may be read otherwise than it was meant',
    async (weight, why) => {
      const rows = `A,68,96,987\nB,72,99,"${weight}"\nC,74,101,12\n`;
      place.write('weighed.csv', `# unit: cm\nname,waist,hip,people\n${rows}`);
      const call = typed('coverage chart.csv --bodies weighed.csv --weights people');
      const { status, stdout, stderr } = await place.run(...call);
      expect([status, stdout]).toEqual([2, '']);
      expect(stderr).toContain(why);
      expect(stderr.replace(/\s+/gu, ' ')).toContain('row 4, column 4');
      // Beside other decimals 1,250 is one: A and B of 987 + 1.25 + 0.5 fit.
      place.write('weighed.csv', place.read('weighed.csv').replace(/,12\n$/u, ',0.5\n'));
      if (weight === '1,250') expect((await place.run(...call)).status).toBe(0);
    },
  );

  it('refuses bodies that are all alike, of which no normal can be drawn', async () => {
    place.write('alike.csv', '# unit: cm\nname,waist,hip\nA,70,96\nB,70,99\n');
    const { status, stderr } = await place.run(...typed('coverage chart.csv --bodies alike.csv'));
    expect(status).toBe(2);
    expect(stderr).toContain('2 with the same waist');
    place.write('left.csv', '# unit: cm\nname,waist,hip,people\nA,70,96,3\nB,72,99,0\n');
    const left = await place.run(...typed('coverage chart.csv --bodies left.csv --weights people'));
    expect(left.status).toBe(2);
  });

  it('writes the shares, a picture, and a range that grade takes and that serves what is said', async () => {
    const { stdout } = await place.run('coverage', 'chart.csv', '--suggest', '5', '--out', 'fits');
    const said = /5 sizes proposed would serve ([\d.]+) %/u.exec(stdout)?.[1];
    const chart = join('fits', 'suggested-chart.csv');
    const again = await place.run('coverage', chart);
    expect(again.stdout).toContain(`${said ?? '?'} % find one of its 5 sizes`);
    const graded = await place.run(
      'grade',
      chart,
      '--base',
      '3',
      '--style',
      'pencil',
      '--out',
      'made',
    );
    expect([graded.status, graded.stderr]).toEqual([0, '']);
    const rows = place.read('fits/coverage.csv').trimEnd().split('\n');
    const served = rows
      .find((row) => row.startsWith('chart.csv,served'))
      ?.split(',')
      .at(-1);
    const sizes = rows.filter((row) => /^chart\.csv,\d/u.test(row));
    expect(sizes).toHaveLength(4);
    const sum = sizes.reduce((total, row) => total + Number(row.split(',').at(-1)), 0);
    expect(sum).toBeCloseTo(Number(served), 2);
  });

  it('draws every size as a box, and tells all apart without color', async () => {
    await place.run('coverage', 'chart.csv', '--out', 'drawn');
    const svg = place.read('drawn/coverage.svg');
    expect(svg.match(/data-part="size"/gu)).toHaveLength(4 + 1);
    // Cloud, ink and soft ink: greys that differ in lightness, each line by its dash besides.
    const colors = new Set(svg.match(/#[0-9a-f]{6}/gu));
    expect([...colors].sort()).toEqual(['#141a22', '#5a6472', '#9aa3ad', '#ffffff']);
    const dashes = svg
      .match(/data-part="table"[^>]*/gu)
      ?.map((tag) => /dasharray="[^"]*"/u.exec(tag)?.[0]);
    expect(new Set(dashes).size).toBe(5);
  });

  it('takes a list of bodies, and says what it set aside', async () => {
    place.write(
      'survey.csv',
      '# unit: cm\nname,waist,hip\na,64,92\nb,65,93\nc,x,90\nMean,64.5,92.5\n',
    );
    const { status, stdout } = await place.run('coverage', 'chart.csv', '--bodies', 'survey.csv');
    expect(status).toBe(0);
    expect(stdout).toContain('100 % find one of its 4 sizes');
    expect(stdout.replace(/\s+/gu, ' ')).toMatch(
      /2 bodies of survey.csv, each counted once; 2 set aside, .*: row 5, row 6\. /u,
    );
    const wrong = await place.run(
      ...typed('coverage chart.csv --bodies survey.csv --population us-women-2017'),
    );
    expect(wrong.stderr).toMatch(/^skirtgrade: --population: a list of bodies is a population/u);
  });
});
