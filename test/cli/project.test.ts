/** The project file `skirt.csv` beside a chart, in a call as somebody makes it. */
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { chartText } from '../skirts';
import { runIn, workplace, typed } from './workplace';

const place = workplace();
const CHART = chartText(
  'in',
  { waist_girth: [26, 27, 28.5], hip_girth: [36, 37, 38.5], waist_to_hip: [8, 8, 8.25] },
  ['8', '10', '12'],
);
place.write('my.csv', CHART);

const project = (...rows: readonly string[]): void => {
  place.write('skirt.csv', ['parameter,value,note', ...rows, ''].join('\n'));
};
/** Words of a text, whatever its lines. */
const flat = (text: string): string => text.replace(/\s+/gu, ' ');

beforeEach(() => {
  rmSync(join(place.path, 'output'), { recursive: true, force: true });
});

describe('a project beside its chart', () => {
  it('does again what a call said, to the byte', async () => {
    const said = typed('my.csv --base 10 --style straight --unit cm');
    const set = ['--set', 'hem_allowance=4 cm', '--sizes', '8,10'];
    await place.run('grade', ...said, ...set, '--out', 'said');
    project(
      ...['chart,my.csv,', 'base,10,', 'style,straight,', 'unit,cm,', 'out,kept,'],
      ...['Hem Allowance,4 cm,deep', '"sizes","8,10",', 'fabric,no,'],
    );
    const { status, stdout, stderr } = await place.run('grade');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(flat(stdout)).toMatch(
      /^From skirt\.csv: chart my\.csv, .*base 10.*hem_allowance 4 cm my\.csv: 3 sizes, style straight/u,
    );
    for (const file of ['nest.svg', 'graded-points.csv', 'grade-rules.csv'])
      expect(place.read(`kept/${file}`)).toBe(place.read(`said/${file}`));
  });

  it('gives way to the call, row by row', async () => {
    project('base,10,', 'style,straight,', 'hem_allowance,4 cm,', 'unit,cm,');
    const call = ['grade', 'my.csv', '--base', '12', '--set', 'hem_allowance=2 in', '--out', 'won'];
    const { stdout } = await place.run(...call);
    expect(stdout).toMatch(/^From skirt\.csv: style straight, unit cm\n\n/u);
    expect(stdout).toContain('base 12');
    const plain = typed('grade my.csv --base 12 --style straight --unit cm');
    rmSync(join(place.path, 'skirt.csv'));
    await place.run(...plain, '--set', 'hem_allowance=2 in', '--out', 'plain');
    expect(place.read('won/nest.svg')).toBe(place.read('plain/nest.svg'));
  });

  it('is taken by every command that has its options, from wherever it is called', async () => {
    mkdirSync(join(place.path, 'room'), { recursive: true });
    place.write('room/chart.csv', CHART);
    place.write('room/ours.csv', '# based on: straight\nparameter,value\nhip_ease,3 in\n');
    place.write(
      'room/skirt.csv',
      'parameter,value\nchart,chart.csv\nstyle,ours.csv\nbase,10\npaper,a0\nagainst,astm-d5585-95\n',
    );
    const graded = await place.run('grade', 'room/chart.csv');
    expect(graded.stdout).toContain('style ours, base 10');
    // A path of a project starts in its folder.
    expect(flat(graded.stdout)).toContain('From room/skirt.csv: base 10, style room/ours.csv');
    const inside = join(place.path, 'room');
    expect((await runIn(inside, ['print'])).stdout).toContain('print-a0.pdf');
    expect((await runIn(inside, ['check'])).stdout).toContain('ASTM D5585-95');
    const rules = 'output/chart/grade-rules.csv';
    const assessed = await place.run('assess', 'room/chart.csv', rules);
    expect(assessed.stdout).toContain('Score: 100 of 100');
    const explained = await place.run('explain', 'room/chart.csv', 'front.side_hip');
    expect(explained.stdout).toContain('Base 10');
    expect((await runIn(inside, ['explain', 'chart.csv', '--markdown'])).stdout).not.toMatch(
      /^From/u,
    );
    const json = (await runIn(inside, ['grade', '--json'])).stdout;
    expect(JSON.parse(json)).toMatchObject({ result: { base: '10' } });
  });

  it('is of the chart that it names alone, and of any where it names none', async () => {
    place.write('other.csv', CHART);
    project('chart,my.csv', 'base,10,');
    const { status, stderr, stdout } = await place.run('grade', 'other.csv', '--base', '8');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toMatch(/^skirt\.csv is of my\.csv, and is left out here\.\n/u);
    expect(stdout).toContain('base 8');
    project('base,10,');
    expect((await place.run('grade', 'other.csv')).stdout).toContain('base 10');
    const alone = await place.run('grade');
    expect(alone).toMatchObject({ status: 2, stdout: '' });
    expect(alone.stderr).toContain('skirt.csv: the project here names no chart');
  });

  it('gives the result its title, before the chart', async () => {
    const titled = `# title: Of the chart\n${CHART}`;
    place.write('titled.csv', titled);
    place.write('skirt.csv', '# title: Sunday skirt\nparameter,value\nbase,10\n');
    const { stdout } = await place.run('grade', 'titled.csv', '--out', 'sunday');
    expect(flat(stdout)).toMatch(/^From skirt\.csv: base 10, title Sunday skirt /u);
    expect(place.read('sunday/nest.svg')).toContain('>Sunday skirt<');
    expect(place.read('sunday/nest.svg')).not.toContain('Of the chart');
    const json = (await place.run('grade', 'titled.csv', '--json', '--out', 'sunday')).stdout;
    expect(JSON.parse(json)).toMatchObject({ result: { title: 'Sunday skirt' } });
    // A style file is for many skirts: its title stands where the chart has none.
    place.write('ours.csv', '# title: Ours\nparameter,value\nhip_ease,3 in\n');
    project('base,10,', 'style,ours.csv,');
    await place.run('grade', 'titled.csv', '--out', 'charted');
    expect(place.read('charted/nest.svg')).toContain('>Of the chart<');
    await place.run('grade', 'my.csv', '--out', 'styled');
    expect(place.read('styled/nest.svg')).toContain('>Ours<');
    project('base,10,', 'style,straight,');
    place.write('skirt.csv', `# title: ${'long '.repeat(30)}\nparameter,value\nbase,10\n`);
    const { status, stderr } = await place.run('grade', 'titled.csv');
    expect(status).toBe(2);
    expect(flat(stderr)).toContain('skirt.csv, row 1: the title has too many characters');
  });

  it('gives its style to bodies and to shares, and nothing of where files go', async () => {
    place.write('bodies.csv', '# unit: in\nname,waist_girth,hip_girth\nAda,27,37\n');
    project('chart,my.csv,', 'style,straight,', 'out,ranged,', 'sizes,8,', 'paper,a4,', 'base,10,');
    const drafted = await place.run('draft', 'bodies.csv', '--json', '--out', 'made');
    expect(JSON.parse(drafted.stdout)).toMatchObject({ result: { style: 'straight' } });
    const told = await place.run('draft', 'bodies.csv', '--out', 'made');
    expect(flat(told.stdout)).toMatch(/^From skirt\.csv: style straight /u);
    expect(existsSync(join(place.path, 'ranged'))).toBe(false);
    project('style,straight,', 'out,ranged,', 'hip_ease,1 in,');
    const shares = await place.run('coverage', 'my.csv');
    expect(flat(shares.stdout)).toMatch(/^From skirt\.csv: style straight, hip_ease 1 in /u);
    expect(existsSync(join(place.path, 'ranged'))).toBe(false);
    // A project of a pattern that is there has no style for bodies.
    project('pattern,base.csv,', 'rules,rules.csv,');
    expect((await place.run('draft', 'bodies.csv', '--out', 'made')).stdout).not.toMatch(/^From/u);
  });

  it('is told by the list of styles', async () => {
    project('style,straight,');
    expect((await place.run('styles')).stdout).toMatch(/^skirt\.csv takes style straight\.\n/u);
    project('base,10,');
    expect((await place.run('styles')).stdout).toMatch(
      /^skirt\.csv takes style shared-pencil\.\n/u,
    );
    expect((await place.run('styles', 'pencil')).stdout).toMatch(/^pencil: /u);
    expect((await place.run('styles', '--json')).stdout).toMatch(/^\{/u);
  });

  it('is no project where the chart itself has that name', async () => {
    place.write('skirt.csv', CHART);
    const { status, stdout } = await place.run('grade', 'skirt.csv', '--base', '10');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^skirt\.csv: 3 sizes/u);
  });
});

describe('a row of a project', () => {
  it.each([
    ['bsae,10,', 'skirt.csv, row 2', 'Did you mean base?', 'Got: bsae'],
    ['hem_tapper,1 in,', 'skirt.csv, row 2', 'Did you mean hem_taper?', 'Got: hem_tapper'],
    [
      'hem_tapper,1 in,\npapr,a4,\nhip_ease,2 in,\nzzz,1,',
      ...['skirt.csv, row 2', 'Also row 3, got papr (did you mean paper?); row 5, got zzz.'],
    ],
    ['unit,ell,', 'skirt.csv, row 2', 'Allowed: in, cm, mm', 'Got: ell'],
    ['style,pensil,', 'skirt.csv, row 2', 'Did you mean pencil', 'Got: pensil'],
    ['base,11,', 'skirt.csv, row 2', 'Allowed: 8, 10, 12', 'Got: 11'],
    ['fractions,perhaps,', 'skirt.csv, row 2', 'yes or no', 'Got: perhaps'],
    ['round,3in,', 'skirt.csv, row 2', 'rounding step', 'Got: 3in'],
    ['hem_taper,9 kg,', 'skirt.csv, row 2', 'hem_taper', '9 kg'],
    ['hem_taper,2.5,', 'skirt.csv, row 2', 'without a unit', 'Allowed: 2.5 in or 2.5 cm'],
    ['hip_ease,1 1/2,', 'skirt.csv, row 2', 'without a unit', 'Got: 1 1/2'],
    ['base,10,\nbase,12,', 'skirt.csv, row 3', 'set twice', 'Got: base'],
    ['chart,none.csv,', 'none.csv', 'no such file'],
  ])('%j is refused by its place', async (row, ...words) => {
    const others = ['chart,my.csv,', 'base,10,'].filter((one) => !row.includes(one.slice(0, 5)));
    project(row, ...others);
    const { status, stdout, stderr } = await place.run('grade');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    for (const word of words) expect(flat(stderr)).toContain(word);
    expect(stderr).not.toContain('--base:');
  });
});

describe('a line above the rows of a project', () => {
  const lined = (line: string, ...rows: readonly string[]): void => {
    place.write(
      'skirt.csv',
      [line, 'parameter,value,note', 'chart,my.csv,', ...rows, ''].join('\n'),
    );
  };

  it.each([
    ['# base: 12', 'base,10,', 'a row base,12'],
    ['# base 12', 'base,10,', 'a row base,12'],
    ['# paper: letter', 'base,10,', 'a row paper,letter'],
    ['# Hem taper = 3 in', 'base,10,', 'a row hem_taper,3 in'],
    ['# style pencil, base 10, paper letter', 'base,10,', 'a row paper,letter'],
    ['# based on: pencil', 'style,straight,\nbase,10,', 'names two styles'],
    ['# unit: cm', 'unit,in,\nbase,10,', 'the row unit is not centimeters'],
  ])('%j is refused beside %j', async (line, rows, words) => {
    lined(line, rows);
    const { status, stdout, stderr } = await place.run('grade');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(flat(stderr)).toContain(words);
    expect(flat(stderr)).toContain('skirt.csv, row');
  });

  it.each([
    ['# base: 10', 'base,10,'],
    ['# based on: straight', 'style,straight,\nbase,10,'],
    ['# unit: cm', 'unit,cm,\nbase,10,\nhem_taper,2,'],
    ['# for spring: base of all others', 'base,10,'],
    ['# not read: base: 12', 'base,10,'],
  ])('%j says nothing else than %j', async (line, rows) => {
    lined(line, rows);
    expect(await place.run('grade', '--quiet')).toMatchObject({ status: 0, stderr: '' });
  });

  it('that sets a parameter is refused in a style file too', async () => {
    rmSync(join(place.path, 'skirt.csv'), { force: true });
    place.write('mine.csv', '# hem_taper: 3 in\nparameter,value\nhip_ease,2 in\n');
    const { status, stderr } = await place.run(...typed('grade my.csv --base 10 --style mine.csv'));
    expect(status).toBe(2);
    expect(flat(stderr)).toContain('mine.csv, row 1');
    expect(flat(stderr)).toContain('a row hem_taper,3 in');
  });
});

describe('the chart of a project', () => {
  it('stands for the one that a call leaves out, whatever else stands there', async () => {
    project('chart,my.csv,', 'base,10,', 'style,pencil,');
    const { stdout } = await place.run('explain', 'front.side_waist');
    const { stdout: whole } = await place.run('explain', 'my.csv', 'front.side_waist');
    expect(stdout.replace('chart my.csv, ', '')).toBe(whole);
    expect((await place.run('explain', 'front.side_waits')).stderr).toContain('side_waist?');
    place.write('mine.csv', 'point,axis,8,10,12\nfront.side_waist,dx_in,-1/4,0,3/8\n');
    const marked = ['mine.csv', '--pieces', 'front'];
    expect((await place.run('assess', ...marked)).stdout).toContain('mine.csv against my.csv');
    expect((await place.run('coverage')).stdout).toContain('From skirt.csv: chart my.csv');
    expect((await place.run('page')).stdout).toContain('with my.csv inside');
  });

  it('is asked for where neither project nor call names one', async () => {
    project('base,10,');
    for (const call of [['page'], ['print'], ['explain', 'front.side_waist'], ['coverage']]) {
      const { status, stderr } = await place.run(...call);
      expect(status).toBe(2);
      expect(flat(stderr)).toContain(`skirt.csv: the project here names no chart`);
      expect(flat(stderr)).toContain(`skirtgrade ${call[0] ?? ''} <chart.csv>`);
    }
  });

  it('is no pattern', async () => {
    project('pattern,base.csv,', 'rules,rules.csv,');
    for (const name of ['page', 'print', 'check', 'coverage', 'explain']) {
      const { status, stderr } = await place.run(name);
      expect(status).toBe(2);
      expect(flat(stderr)).toContain(`of the pattern base.csv, and ${name} takes a chart`);
    }
    // A sheet is held against the pattern itself.
    const { status, stderr } = await place.run('assess');
    expect(status).toBe(2);
    expect(flat(stderr)).toContain('assess lacks <sheet.csv>');
  });
});

describe('a base that the chart states', () => {
  const BASED = CHART.replace('\n', '\n# base: 10\n');
  it('is that of a call that names none', async () => {
    rmSync(join(place.path, 'skirt.csv'), { force: true });
    place.write('based.csv', BASED);
    await place.run('grade', 'based.csv', '--out', 'stated');
    await place.run('grade', 'my.csv', '--base', '10', '--out', 'named');
    expect(place.read('stated/graded-points.csv')).toBe(place.read('named/graded-points.csv'));
    expect((await place.run('explain', 'based.csv')).stdout).toContain('base 10');
    expect((await place.run('grade', 'based.csv', '--base', '12')).stderr).toContain('Allowed: 10');
    place.write('none.csv', BASED.replace('base: 10', 'base: 11'));
    expect((await place.run('grade', 'none.csv')).stderr).toContain('Got: 11');
  });
});
