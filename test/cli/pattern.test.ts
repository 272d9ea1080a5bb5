import { readdirSync, existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../csv-tables';
import { FRONT } from '../given/sheets';
import { BODICE, STEPS } from '../seams/bodice';
import { asFirstRun, contents, workplace, typed } from './workplace';

const place = workplace();
place.write('bodice.csv', BODICE);
place.write('rules.csv', STEPS);
place.write('wrong.csv', STEPS.replace('back,waist_side,1,0.6', 'back,waist_side,1,-0.6'));
place.write(
  'measures.csv',
  '# unit: cm\ncode,measure,path,of,times,taken\nS,shoulder,along,front.shoulder,,length\nW,waist,along,front.waist + back.waist,2,girth\n',
);
place.write('sample.csv', 'measure,size,value\nS,M,12.9\nW,M,83\nW,L,89\n');

describe('grade --pattern', () => {
  it('writes nest, sizes, points, rules, seams and findings', async () => {
    const { status, stdout, stderr } = await place.run(
      ...typed('grade --pattern bodice.csv --rules rules.csv --out out'),
    );
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(stdout).toContain(
      'bodice.csv: 5 sizes, 2 pieces, 12 points with rules, base M, rules exact',
    );
    expect(readdirSync(join(place.path, 'out')).sort()).toEqual(
      [
        '.skirtgrade-written',
        ...['findings.csv', 'grade-rules.csv', 'graded-points.csv', 'nest.svg', 'seams.csv'],
        'report.md',
        ...['XS', 'S', 'M', 'L', 'XL'].map((size) => `size-${size}.svg`),
      ].sort(),
    );
    const side = rowsOf(place.read('out/seams.csv')).filter(
      ({ seam, from }) => seam === 'side' && from === 'front.underarm',
    );
    // The whole seam and its first stretch, in each of five sizes.
    expect(side).toHaveLength(10);
    for (const row of side) expect(Math.abs(Number(row.off_cm))).toBeLessThan(0.01);
  });

  it('tells in one sentence what nothing read, and lists it', async () => {
    const lines = ['north is plus', 'by the window', 'third card'].map((line) => `# ${line}\n`);
    place.write('said.csv', `${lines.join('')}${STEPS}`);
    const call = typed('grade --pattern bodice.csv --rules said.csv --out said');
    const { status, stdout } = await place.run(...call);
    expect(status).toBe(0);
    expect(stdout.replaceAll(/\s+/gu, ' ')).toContain(
      'Not read: said.csv row 1 "north is plus"; said.csv row 2 "by the window"; and 1 more, in ' +
        'findings.csv. Check that they do not change how cells count.',
    );
    const found = rowsOf(place.read('said/findings.csv')).filter(
      ({ check }) => check === 'not-read',
    );
    expect(found.map(({ severity, subject }) => `${severity} ${subject}`)).toEqual(
      lines.map(() => 'note said.csv'),
    );
  });

  it('refuses what a sheet says in words that are not read, and writes nothing', async () => {
    place.write('front.csv', FRONT);
    const rules = 'point,axis,10,12,14\nfront.side_hip,x,-4,0,4\n';
    place.write('sixteenths.csv', `# all numbers in 16ths\n${rules}`);
    place.write('plain.csv', rules);
    place.write('upside.csv', `# origin: bottom left\n${FRONT}`);
    for (const [base, sheet, ...words] of [
      ['front.csv', 'sixteenths.csv', 'sixteenths.csv, row 1', 'fractions of a unit', '16ths'],
      ['upside.csv', 'plain.csv', 'upside.csv, row 1', '# y: up'],
      ['front.csv', 'plain.csv --base 14', '--base', 'another size', '12'],
    ] as const) {
      const call = ['--pattern', base, '--rules', ...sheet.split(' '), '--out', 'unread'];
      const { status, stderr } = await place.run('grade', ...call);
      expect(status, sheet).toBe(2);
      for (const word of words) expect(stderr).toContain(word);
      expect(existsSync(join(place.path, 'unread'))).toBe(false);
    }
    place.write('sheet.csv', `# unit: in (sixteenths)\n${rules}`);
    const inferred = await place.run('infer', 'sheet.csv');
    expect(inferred).toMatchObject({ status: 2, stdout: '' });
    expect(inferred.stderr).toContain('sheet.csv, row 1');
  });

  it('reads the unit in the words of a sheet, and refuses a column that is no size', async () => {
    place.write('quarter.csv', FRONT);
    const rules = 'point,axis,10,12,14\nfront.side_hip,x,-1.27,0,1.27\n';
    const call = ['grade', '--pattern', 'quarter.csv', '--rules'];
    for (const line of ['# unit: cm', '# units: cm', '# measurements in cm', 'units,cm']) {
      place.write('words.csv', `${line}\n${rules}`);
      await place.run(...call, 'words.csv', '--out', 'words', '--replace');
      const moved = rowsOf(place.read('words/grade-rules.csv')).find(
        ({ point, size }) => point === 'side_hip' && size === '14',
      );
      expect(Number(moved?.dx_in), line).toBeCloseTo(0.5, 6);
    }
    place.write('total.csv', rules.replace('14\n', '14,total\n').replace('1.27\n', '1.27,2.54\n'));
    const { status, stderr } = await place.run(...call, 'total.csv', '--out', 'total');
    expect(status).toBe(2);
    expect(stderr).toContain('"total" stands where a size does, but it names none');
    expect(existsSync(join(place.path, 'total'))).toBe(false);
  });

  it('takes the folder after the pattern, and gives the same bytes again', async () => {
    const call = typed(
      'grade --pattern bodice.csv --rules rules.csv --dxf --measures measures.csv',
    );
    await place.run(...call);
    const written = () =>
      new Map(
        [...contents(join(place.path, 'output/bodice'))].map(([path, text]) => [
          path,
          asFirstRun(path, text),
        ]),
      );
    const first = written();
    expect([...first.keys()].map((name) => name.replace(/^.*\//u, ''))).toEqual(
      expect.arrayContaining([
        'pattern.dxf',
        'pattern.rul',
        'nest.dxf',
        'spec.csv',
        'grade-sheet.csv',
      ]),
    );
    await place.run(...call);
    expect(written()).toEqual(first);
  });

  it('ends with 1 where a sign is wrong, and names it', async () => {
    const { status, stdout } = await place.run(
      ...typed('grade --pattern bodice.csv --rules wrong.csv --verbose --out wrong'),
    );
    expect(status).toBe(1);
    expect(stdout.replace(/\s+/gu, ' ')).toContain(
      'fail wrong-sign (size S, back, waist_side): the sign of dy at back waist_side is probably wrong',
    );
  });

  it('ends with 1 where the legs of a dart are apart in the base, and says where to mend it', async () => {
    place.write('legs.csv', FRONT.replace('dart_out,4,0', 'dart_out,4,-0.25'));
    place.write('grows.csv', 'point,axis,10,12,14\nfront.side_hip,x,-1/4,0,1/4\n');
    for (const more of [[], ['--round', '5mm']]) {
      const { status, stdout } = await place.run(
        ...typed('grade --pattern legs.csv --rules grows.csv --out legs'),
        ...['--replace', '--verbose', ...more],
      );
      expect(status).toBe(1);
      const words = stdout.replace(/\s+/gu, ' ');
      expect(words).toContain(
        'fail dart-legs (size 12, front, dart_tip): the legs are 4 1/32 in and',
      );
      expect(words).toContain('make them equal in the pattern');
      expect(words).not.toContain('probably');
    }
  });

  it('walks seams whose names are spelled in two ways, and each only once', async () => {
    place.write('spelled.csv', BODICE.replace(/(back,underarm.*),side,side/u, '$1,side,Side '));
    place.write('seams.csv', 'edge,sewn_to\nback.side,front.side\n');
    const call = typed('grade --pattern spelled.csv --rules wrong.csv --out spelled');
    const { status, stdout } = await place.run(...call, '--verbose', '--seams', 'seams.csv');
    expect(status).toBe(1);
    expect(stdout).toContain('Seams that meet in every size: 1 of 2');
    expect(stdout).toContain('fail seam-lengths');
    place.write('seams.csv', 'edge,sewn_to,ease\nback.side,front.side,1\nfront.side,back.side,1\n');
    const refused = await place.run(...call, '--replace', '--seams', 'seams.csv');
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain('one seam has two eases, 1 cm in this row and -1 cm in row 2');
  });

  it('ends with 1 where a girth of the chart beside it shrinks from a smaller size to a larger', async () => {
    place.write('quarter.csv', FRONT);
    const side = 'front,side_waist,1/4 hip_girth,0\nfront,side_hip,1/4 hip_girth,0\n';
    place.write('rows.csv', `piece,point,step_dx,step_dy\n${side}front,center_waist,0,0\n`);
    const chart = (waists: string) =>
      `# unit: in\nmeasurement,10,12,14\nwaist_girth,${waists}\nhip_girth,36,38,40\n`;
    place.write('grows.csv', chart('26,28,30'));
    place.write('shrinks.csv', chart('30,28,26'));
    const call = typed('grade --pattern quarter.csv --rules rows.csv --out charted');
    expect((await place.run(...call, '--chart', 'grows.csv')).status).toBe(0);
    const { status, stdout } = await place.run(
      ...call,
      '--replace',
      '--verbose',
      '--chart',
      'shrinks.csv',
    );
    expect(status).toBe(1);
    expect(stdout).toContain('fail larger-is-smaller (size 10-14, waist_girth)');
  });

  it('ends with 1 where a sample is out of tolerance', async () => {
    const { status, stdout } = await place.run(
      ...typed('grade --pattern bodice.csv --rules rules.csv --out sampled --verbose'),
      ...['--measures', 'measures.csv', '--measured', 'sample.csv'],
    );
    expect(status).toBe(1);
    expect(stdout).toContain('fail sample');
    const results = rowsOf(place.read('sampled/sample.csv')).map(
      ({ code, size, result }) => `${code} ${size} ${result}`,
    );
    expect(results).toEqual(['S M pass', 'W M pass', 'W L out']);
  });

  it('prints and lays a pattern that says how it is cut', async () => {
    place.write('cut.csv', BODICE.replace('# unit: cm', '# unit: cm\n# allowance: 1.5'));
    const run = (...more: readonly string[]) =>
      place.run('grade', '--pattern', 'cut.csv', '--rules', 'rules.csv', '--out', 'cut', ...more);
    const { status, stderr } = await run('--paper', 'a4,projector', '--fabric', '--dxf');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(readdirSync(join(place.path, 'cut'))).toEqual(
      expect.arrayContaining(['fabric.csv', 'lay-shell.svg', 'print-a4.pdf', 'projector.pdf']),
    );
    const nest = place.read('cut/nest.svg');
    expect(nest).toContain('seam allowances are included');
    expect(nest).toContain('1.5 cm (5/8 in): ');
    await run('--lines', 'net');
    expect(place.read('cut/nest.svg')).not.toContain('seam allowances are included, as');
  });

  it('grades a drawing that it wrote', async () => {
    await place.run(...typed('grade --pattern bodice.csv --rules rules.csv --dxf --out dxf'));
    const { status } = await place.run(
      ...typed('grade --pattern dxf/pattern.dxf --rules dxf/pattern.rul --out back'),
    );
    expect(status).toBe(0);
  });
});

describe('refusals of grade --pattern', () => {
  it.each([
    ['no rules', ['--pattern', 'bodice.csv'], '--rules'],
    ['a file that is not there', ['--pattern', 'none.csv', '--rules', 'rules.csv'], 'none.csv'],
    ['an unknown size', typed('--pattern bodice.csv --rules rules.csv --sizes XXL'), '--sizes'],
    ['an unknown base', typed('--pattern bodice.csv --rules rules.csv --base 12'), 'bodice.csv'],
    [
      'an unknown stack point',
      typed('--pattern bodice.csv --rules rules.csv --stack hem'),
      '--stack',
    ],
    [
      'cloth for pieces without cut lines',
      typed('--pattern bodice.csv --rules rules.csv --fabric'),
      '# allowance: 1.5',
    ],
    [
      'a spec without points of measure',
      typed('--pattern bodice.csv --rules rules.csv --spec'),
      '--measures',
    ],
    [
      'an option of drafting',
      typed('--pattern bodice.csv --rules rules.csv --set hip_ease=2in'),
      '--set',
    ],
    [
      'a chart to draft from',
      typed('bodice.csv --pattern bodice.csv --rules rules.csv'),
      '--pattern',
    ],
    ['rules without a pattern', typed('bodice.csv --base M --rules rules.csv'), '--rules'],
    ['neither chart nor pattern', ['--base', 'M'], 'grade lacks <chart.csv>'],
  ])('%s: one message, exit code 2, nothing written', async (_, args, told) => {
    const { status, stderr } = await place.run('grade', ...args, '--out', 'refused');
    expect(status).toBe(2);
    expect(stderr).toContain(told);
    expect(existsSync(join(place.path, 'refused'))).toBe(false);
  });
});
