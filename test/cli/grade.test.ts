import { MISSES_GRADE, MISSES_SIZES } from '../published';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { pointsOf, rowsOf } from '../csv-tables';
import { chartText, INCH_PENCIL, sizeRowsText } from '../skirts';
import { contents, workplace, typed } from './workplace';

const place = workplace();

/** The published misses sizing as a person types it. */
const TYPED = {
  waist_girth: ['23', '24', '25', '26 1/2', '28', '30', '32', '34'],
  hip_girth: ['32½', '33-1/2', '34.5', '36', '38', '40', '42', '44'],
};
// The same chart in centimeters: an inch is 2.54 cm.
const METRIC = {
  waist_girth: ['58,42', '60,96', '63,5', '67,31', '71,12', '76,2', '81,28', '86,36'],
  hip_girth: ['82,55', '85,09', '87,63', '91,44', '96,52', '101,6', '106,68', '111,76'],
};
place.write('misses.csv', chartText('in', TYPED, MISSES_SIZES));

describe('the uneven misses grade, end to end', () => {
  const COLUMN: Readonly<Record<string, 1 | 2 | 3>> = {
    side_waist: 1,
    dart_inner: 2,
    dart_center: 2,
    dart_tip: 2,
    dart_outer: 2,
    side_hip: 3,
    side_hip_handle: 3,
    side_hem: 3,
  };

  it('gives rules that are exact in sixteenths', async () => {
    const { status, stderr } = await place.run(
      ...typed('grade misses.csv --style pencil --base 12 --out misses'),
    );
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    // The lines for lengthening end on the slanting side, where a move is no sixteenth.
    const rules = rowsOf(place.read('misses/grade-rules.csv')).filter(
      ({ point = '' }) => !/^(?:length|hip_depth)_/u.test(point),
    );
    expect(rules).toHaveLength(8 * (12 + 14));
    for (const { piece, point = '', size = '', ...cells } of rules) {
      if (point === 'side_waist_handle') continue;
      const column = COLUMN[point];
      const sixteenths = (i: number) =>
        column === undefined ? 0 : (MISSES_GRADE[i]?.[column] ?? NaN);
      const i = MISSES_SIZES.indexOf(size);
      const neighbor = i + Math.sign(3 - i);
      const about = `${piece} ${point} of ${size}`;
      expect(Number(cells.dx_in) * 16, about).toBe(sixteenths(i));
      expect(Number(cells.step_dx_in) * 16, about).toBe(sixteenths(i) - sixteenths(neighbor));
      expect([cells.dy_in, cells.step_dy_in], about).toEqual(['0', '0']);
    }
  });

  it('gives finished girths of body plus ease, exact in the table', () => {
    const [waist, hip] = rowsOf(place.read('misses/finished-measurements.csv'));
    const halves = (row: Readonly<Record<string, string>> | undefined) =>
      MISSES_SIZES.map((size) => Number(row?.[size]) * 2);
    expect(halves(waist)).toEqual([46, 48, 50, 53, 56, 60, 64, 68]);
    expect(halves(hip)).toEqual([69, 71, 73, 76, 80, 84, 88, 92]);
  });

  it('is the same in centimeters and with one size a row', async () => {
    const semicolons = Object.entries({ measurement: MISSES_SIZES, ...METRIC })
      .map(([name, cells]) => [name, ...cells].join(';'))
      .join('\n');
    place.write('metric.csv', `# unit: cm\n${semicolons}\n`);
    place.write('rows.csv', sizeRowsText('in', TYPED, MISSES_SIZES));
    const args = typed('--style pencil --base 12 --unit in --out');
    // Defaults follow the unit of the chart, so those of inches are set for the one in cm.
    const set = Object.entries(INCH_PENCIL).flatMap(([name, value]) => [
      '--set',
      `${name}=${value}`,
    ]);
    expect((await place.run('grade', 'metric.csv', ...set, ...args, 'metric')).status).toBe(0);
    expect((await place.run('grade', 'rows.csv', ...args, 'rows')).status).toBe(0);

    const points = place.read('misses/graded-points.csv');
    expect(place.read('rows/graded-points.csv')).toBe(points);
    expect(place.read('rows/grade-rules.csv')).toBe(place.read('misses/grade-rules.csv'));
    const [inches, metric] = [points, place.read('metric/graded-points.csv')].map((text) =>
      pointsOf(text, 'in'),
    );
    for (const { size = '', piece = '', point = '' } of rowsOf(points)) {
      const [a, b] = [inches?.(size, piece, point), metric?.(size, piece, point)];
      // A tie in the last of five decimals may fall either way.
      expect(Math.abs((a?.x ?? NaN) - (b?.x ?? NaN))).toBeLessThan(1.1e-5);
      expect(Math.abs((a?.y ?? NaN) - (b?.y ?? NaN))).toBeLessThan(1.1e-5);
    }
  });

  it('is the same when its canonical form is printed and graded', async () => {
    const { status, stdout } = await place.run('chart', 'rows.csv');
    expect(status).toBe(0);
    expect(stdout.split('\n').slice(0, 2)).toEqual([
      '# unit: in',
      `measurement,${MISSES_SIZES.join()}`,
    ]);
    place.write('canonical.csv', stdout);
    await place.run(...typed('grade canonical.csv --style pencil --base 12 --out canonical'));
    expect(place.read('canonical/graded-points.csv')).toBe(place.read('misses/graded-points.csv'));
  });
});

describe('the check values of the pencil skirt', () => {
  // The quarter method: common practice, no source.
  place.write('check.csv', chartText('in', { waist_girth: [24, 26], hip_girth: [36, 38] }));

  it('stand in the table of points', async () => {
    await place.run('grade', 'check.csv', '--style', 'pencil', '--base', '1', '--out', 'check');
    const text = place.read('check/graded-points.csv');
    for (const line of [
      ...['1,front,center_waist,0,0', '1,front,dart_inner,3,0', '1,front,dart_outer,4,0'],
      ...['1,front,dart_tip,3.5,4', '1,front,side_waist,7,0', '1,front,side_hip,9.5,8'],
      ...['1,front,side_hem,8.5,27', '1,front,center_hem,0,27', '1,back,dart_tip,3.5,5'],
      ...['1,back,side_waist,7,0', '1,back,zip_waist,-1,0', '1,back,zip_hem,-1,27'],
    ])
      expect(text.split('\n')).toContain(line);
  });

  it('change by style, setting and style file', async () => {
    place.write('house.csv', '# based on: straight\nparameter,value,note\nskirt_length,25,\n');
    const args = typed('grade check.csv --base 1 --style house.csv --out house');
    await place.run(...args, '--set', 'zip_allowance=5/8 in', '--set', 'hem_taper = hip_girth/36');
    const text = place.read('house/graded-points.csv').split('\n');
    expect(text).toContain('1,front,side_hem,8.5,25');
    expect(text).toContain('1,back,zip_hem,-0.625,25');
  });
});

describe('options', () => {
  const points = (folder: string) => place.read(`${folder}/graded-points.csv`).split('\n');

  it('choose sizes, unit, stack point and rounding', async () => {
    const { status, stdout } = await place.run(
      ...typed('grade misses.csv --style pencil --base 12 --out options --sizes'),
      '10, 12',
      ...typed('--unit cm --stack side_hip --round 1/8in'),
    );
    expect(status).toBe(0);
    expect(stdout.replace(/\s+/g, ' ')).toContain('stacked on side_hip, rules rounded to 0.32 cm');
    expect(points('options')[0]).toBe('size,piece,point,x_cm,y_cm');
    expect(points('options')).toContain('12,front,side_hip,0,0');
    expect(
      [...contents(join(place.path, 'options')).keys()].map((file) => file.replace(/.*[\\/]/, '')),
    ).toEqual([
      '.skirtgrade-written',
      'drawing.svg',
      'findings.csv',
      'finished-measurements.csv',
      'grade-rules.csv',
      'graded-points.csv',
      'nest.svg',
      'report.md',
      'seams.csv',
      'size-10.svg',
      'size-12.svg',
    ]);
  });

  it('round to millimeters so that the band still goes on', async () => {
    place.write(
      'misses-depth.csv',
      `${chartText('in', TYPED, MISSES_SIZES)}waist_to_hip${',8'.repeat(8)}\n`,
    );
    const { status } = await place.run(
      ...typed('grade misses-depth.csv --base 12 --style shared-drop --unit mm'),
      ...['--round', '1mm', '--out', 'millimeters'],
    );
    expect(status).toBe(0);
    const measured = new Map(
      rowsOf(place.read('millimeters/finished-measurements.csv')).map((row) => [row.measure, row]),
    );
    const rows = place.read('millimeters/findings.csv').split('\n');
    expect(rows.filter((row) => row.startsWith('fail,'))).toEqual([]);
    MISSES_SIZES.forEach((size, i) => {
      // The waist is the body's and 1 in of ease or none; whatever it is, all sizes have the same.
      const waist = Number(measured.get('waist')?.[size]);
      const body = Number(METRIC.waist_girth[i]?.replace(',', '.')) * 10;
      const ease = Number(measured.get('waist')?.['12']) - 673.1;
      expect(Math.abs(waist - body - ease), size).toBeLessThan(1.05);
      const apart = Number(measured.get('skirt_waist_edge')?.[size]) - waist;
      const inBase =
        Number(measured.get('skirt_waist_edge')?.['12']) - Number(measured.get('waist')?.['12']);
      expect(Math.abs(apart - inBase), size).toBeLessThan(1);
    });
    // What a ruler reads off moves by whole millimeters.
    for (const { point = '', dx_mm, dy_mm } of rowsOf(place.read('millimeters/grade-rules.csv')))
      if (!/handle|fold$/.test(point))
        for (const move of [dx_mm, dy_mm]) expect(Number.isInteger(Number(move)), point).toBe(true);
  });

  it('write inches as fractions', async () => {
    await place.run(
      ...typed('grade misses.csv --style pencil --base 12 --out fractions --fractions'),
    );
    expect(place.read('fractions/grade-rules.csv')).toMatch(
      /^front,side_waist,20,1 7\/8,0,1\/2,0\b/m,
    );
  });

  it('put results into a folder named after the chart if none is given', async () => {
    const { stdout } = await place.run('grade', 'misses.csv', '--style', 'pencil', '--base', '12');
    expect(stdout).toContain('Written to output/misses:');
    expect(place.read('output/misses/graded-points.csv')).toBe(
      place.read('misses/graded-points.csv'),
    );
  });
});

describe('what is written', () => {
  it('has the same bytes on every run', async () => {
    for (const out of ['first', 'second'])
      await place.run(
        ...typed('grade misses.csv --style pencil --base 12 --round 1/16in --out'),
        out,
      );
    const bytes = (folder: string) => [...contents(join(place.path, folder)).values()];
    expect(bytes('first')).toHaveLength(9 + MISSES_SIZES.length);
    expect(bytes('second')).toEqual(bytes('first'));
  });

  it('leaves nothing half written, and names what an earlier run left', async () => {
    await place.run('grade', 'misses.csv', '--style', 'pencil', '--base', '12', '--out', 'again');
    place.write('again/notes.txt', 'mine');
    place.write('again/size-7.svg', 'of nobody');
    const { stdout } = await place.run(
      ...typed('grade misses.csv --style pencil --base 12 --out again --sizes 12,14'),
    );
    const names = [...contents(join(place.path, 'again')).keys()];
    expect(names.filter((name) => name.includes('staging'))).toEqual([]);
    expect(place.read('again/notes.txt')).toBe('mine');
    const told = stdout.replace(/\s+/g, ' ');
    expect(told).toContain('Gone with an earlier run, which wrote them: size-10.svg, size-16.svg');
    expect(told).toContain('Left there by an earlier run, not part of this one: size-7.svg');
    expect(place.read('again/size-7.svg')).toBe('of nobody');
  });
});

describe('a chart that fails a check', () => {
  it('is graded with all files written, and the call ends with 1', async () => {
    place.write('apple.csv', chartText('in', { waist_girth: [40, 42], hip_girth: [38, 40] }));
    const { status, stdout, stderr } = await place.run(
      ...typed('grade apple.csv --verbose --base 1 --out apple'),
    );
    expect({ status, stderr }).toEqual({ status: 1, stderr: '' });
    expect(stdout).toContain('fail side-take-up (size 1, front, side)');
    expect(contents(join(place.path, 'apple')).size).toBe(9 + 2);
    expect(place.read('apple/findings.csv')).toMatch(/^fail,side-take-up,1,front,side,/m);
  });
});
