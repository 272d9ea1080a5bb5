import { mkdirSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { beforeEach, describe, expect, it } from 'vitest';
import { chartText } from '../skirts';
import { contents, typed, workplace } from './workplace';

const place = workplace();

const SIZES = ['10', '12', '14', '16'];
/** Even steps: 1 in of waist and hip; depth and length stay. */
const CHART = chartText(
  'in',
  {
    waist_girth: [27, 28, 29, 30],
    hip_girth: [37, 38, 39, 40],
    waist_to_hip: SIZES.map(() => 8),
    skirt_length: SIZES.map(() => 24),
  },
  SIZES,
);

/** The quarter method by hand: shares of the girth along x; y stays. */
const SHARES: readonly (readonly [string, number])[] = [
  ['center_waist', 0],
  ['dart_inner', 1 / 8],
  ['dart_tip', 1 / 8],
  ['dart_outer', 1 / 8],
  ['side_waist', 1 / 4],
  ['side_hip', 1 / 4],
  ['side_hem', 1 / 4],
  ['center_hem', 0],
];

function sheetOf(change: (move: number, point: string) => number | undefined): string {
  return [
    '# unit: in\n# pieces: front',
    ['point', 'axis', ...SIZES].join(),
    ...SHARES.flatMap(([point, share]) =>
      ['dx', 'dy'].map((axis) =>
        [
          `front.${point}`,
          axis,
          ...SIZES.map((_, i) => change(axis === 'dx' ? share * (i - 1) : 0, point) ?? ''),
        ].join(),
      ),
    ),
    '',
  ].join('\n');
}

const at =
  (name: string, factor: number) =>
  (move: number, point: string): number =>
    point === name ? factor * move : move;

/** A class: one right, two with the same slip, one of these with another besides, one blank, one unreadable. */
const CLASS: Readonly<Record<string, string>> = {
  'ana.csv': sheetOf((move) => move),
  'bo.csv': sheetOf(at('side_hip', 2)),
  'cy.csv': sheetOf((move, point) => at('dart_inner', -1)(at('side_hip', 2)(move, point), point)),
  'di.csv': sheetOf(() => undefined),
  'ed.csv': 'Dear teacher,\nsorry\n',
};

beforeEach(() => {
  mkdirSync(join(place.path, 'sheets'), { recursive: true });
  place.write('chart.csv', CHART);
  for (const [name, text] of Object.entries(CLASS)) place.write(`sheets/${name}`, text);
});

const assess = (...more: readonly string[]) =>
  place.run(
    ...typed('assess chart.csv sheets --base 12 --style pencil --out marks --replace'),
    ...more,
  );

const table = (name: string): readonly Record<string, string>[] =>
  parse(place.read(name), { columns: true });

describe('a folder of sheets', () => {
  it('becomes a table of marks, the slips that are shared, and a page a student', async () => {
    const { status, stdout } = await assess();
    expect(status).toBe(1);
    // Share and sign of six points along x; a slip costs one. Three sizes beside the base are wrong in a row.
    const mark = (row: Record<string, string> | undefined) =>
      [row?.sheet, row?.score, row?.right_decisions, row?.decisions, row?.wrong_cells].join(' ');
    const marks = table('marks/marks.csv');
    expect(marks.map(mark)).toEqual([
      'ana.csv 100 12 12 0',
      'bo.csv 91 11 12 3',
      'cy.csv 83 10 12 6',
      'di.csv    ',
      'ed.csv    ',
    ]);
    expect(marks.map(({ slips }) => slips)).toEqual(['', 'half', 'sign; half', '', '']);
    expect(marks[3]).toMatchObject({ blank_cells: '48', note: 'blank' });
    expect(marks[4]?.note).toMatch(/^not read: sheets\/ed\.csv, row 1/);
    expect(
      table('marks/slips.csv').map(({ slip, count, sheets }) => [slip, count, sheets]),
    ).toEqual([
      ['half', '2', 'bo.csv; cy.csv'],
      ['sign', '1', 'cy.csv'],
    ]);
    expect(stdout).toContain('5 sheets, 1 of them right in every cell.');
    expect(stdout.replace(/\s+/g, ' ')).toMatch(/2: half instead of .* \(bo\.csv, cy\.csv\)/);
    expect(stdout).not.toContain('sign turned');
    expect((await assess('--verbose')).stdout).toContain('1: sign turned');
  });

  it('gives each student a hint that shows nothing of the key, and as much as is asked for', async () => {
    await assess();
    const page = (name: string) => place.read(`marks/${name}.txt`).replace(/\s+/g, ' ');
    expect(page('ana')).toBe('ana.csv Every cell is right. ');
    expect(page('bo')).toBe(
      'bo.csv 3 of 48 cells are wrong. Wrong: front.side_hip dx Ask yourself of front.side_hip dx: ' +
        'Which part of the step of a measurement falls to this point, and why? ',
    );
    expect(page('di')).toBe('di.csv Not judged: 48 of 48 cells are blank. ');
    expect(page('ed')).toContain('This sheet cannot be read yet.');
    await assess('--hint', '1');
    expect(page('bo')).toBe('bo.csv 3 of 48 cells are wrong. ');
    const { status, stderr } = await assess('--hint', '4');
    expect(status).toBe(2);
    expect(stderr).toContain('pages for students do not tell the answer');
  });

  it('is left as it is, whatever is written', async () => {
    const before = contents(join(place.path, 'sheets'));
    await assess();
    expect(contents(join(place.path, 'sheets'))).toEqual(before);
    for (const out of ['sheets', './sheets/', 'sheets/../sheets']) {
      const { status, stderr } = await assess('--out', out);
      expect(status).toBe(2);
      expect(stderr).toContain('the marks would lie among the sheets');
    }
    expect(contents(join(place.path, 'sheets'))).toEqual(before);
  });

  it('leaves out the chart and the project beside the sheets, and tells what is no sheet', async () => {
    place.write('sheets/chart.csv', CHART);
    place.write(
      'sheets/skirt.csv',
      'parameter,value,note\nchart,chart.csv,\nbase,12,\nstyle,pencil,\n',
    );
    place.write('sheets/photo.jpg', 'none');
    const { stdout } = await place.run(
      ...typed('assess sheets/chart.csv sheets --out marks --replace --quiet'),
    );
    expect(stdout).not.toMatch(/chart|skirt|photo/);
    expect(stdout.trim().split('\n')).toEqual(
      ['marks.csv', 'slips.csv', 'ana.txt', 'bo.txt', 'cy.txt', 'di.txt', 'ed.txt'].map(
        (name) => `marks/${name}`,
      ),
    );
    const { stdout: told } = await place.run(
      ...typed('assess sheets/chart.csv sheets --out marks --replace'),
    );
    expect(told).toContain('Not sheets, so not read: photo.jpg');
    for (const name of ['chart.csv', 'skirt.csv', 'photo.jpg'])
      rmSync(join(place.path, 'sheets', name));
  });

  it('is marked though one of its files cannot be read at all', async () => {
    symlinkSync('nowhere', join(place.path, 'sheets/fi.csv'));
    const { status, stdout } = await assess();
    rmSync(join(place.path, 'sheets/fi.csv'));
    expect(status).toBe(1);
    expect(stdout).toContain('6 sheets, 1 of them right in every cell.');
    expect(table('marks/marks.csv')[5]?.note).toMatch(
      /^not read: sheets\/fi\.csv: there is no such file/,
    );
    expect(place.read('marks/fi.txt')).toContain('This sheet cannot be read yet.');
  });

  it('marks each sheet as it would be marked by itself', async () => {
    await assess();
    const marks = table('marks/marks.csv');
    for (const name of ['ana.csv', 'bo.csv', 'cy.csv']) {
      const { stdout } = await place.run(
        ...typed(`assess chart.csv sheets/${name} --base 12 --style pencil`),
      );
      const [, score] = /^Score: (\d+) of 100/m.exec(stdout) ?? [];
      expect(marks.find(({ sheet }) => sheet === name)?.score).toBe(score);
    }
  });

  it('is a document as well', async () => {
    const { stdout } = await assess('--json');
    const { result } = JSON.parse(stdout) as { readonly result: Record<string, unknown> };
    expect(Object.keys(result)).toEqual(
      expect.arrayContaining(['sheets', 'not_sheets', 'hint', 'shared', 'folder', 'files']),
    );
    expect(result.sheets).toHaveLength(5);
  });

  it('is refused where no sheet can be read, or there is none', async () => {
    mkdirSync(join(place.path, 'bad'), { recursive: true });
    const bad = () => place.run(...typed('assess chart.csv bad --base 12 --style pencil'));
    expect(await bad()).toMatchObject({ status: 2 });
    expect((await bad()).stderr).toContain('the folder has no sheets');
    place.write('bad/one.csv', 'Dear teacher\n');
    expect((await bad()).stderr).toMatch(/bad\/one\.csv, row 1/);
    const { status, stderr } = await place.run(
      ...typed('assess chart.csv sheets/ana.csv --base 12 --style pencil --out marks'),
    );
    expect(status).toBe(2);
    expect(stderr).toContain('--out: one sheet is told, and nothing is written');
  });
});
