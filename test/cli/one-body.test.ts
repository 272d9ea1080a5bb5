/** A chart of one body: a skirt without a grade. */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { chartText } from '../skirts';
import { STYLE_NAMES } from '../styles';
import { workplace, typed } from './workplace';

const place = workplace();
const BODY = { waist_girth: [70], hip_girth: [97], waist_to_hip: [21], height: [168] };
const LARGER = {
  waist_girth: [70, 74],
  hip_girth: [97, 101],
  waist_to_hip: [21, 21.5],
  height: [168, 168],
};
place.write('me.csv', chartText('cm', BODY, ['me']));
place.write('two.csv', chartText('cm', LARGER, ['me', 'her']));

describe('a chart of one body', () => {
  it('is drafted, checked and drawn without a base, and the report says that nothing is graded', async () => {
    const { status, stdout, stderr } = await place.run(
      ...typed('grade me.csv --style shared-pencil --spec --dxf --out one'),
    );
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(
      /^me\.csv: 1 size, drafted and not graded, style shared-pencil, base me,/u,
    );
    expect(stdout).not.toMatch(/rules exact|for the step from/u);
    const files = readdirSync(join(place.path, 'one'));
    expect(files).toEqual(expect.arrayContaining(['nest.svg', 'size-me.svg', 'graded-points.csv']));
    expect(files).not.toContain('grade-rules.csv');
    const checks = place
      .read('one/findings.csv')
      .split('\n')
      .map((row) => row.split(',')[1]);
    expect(checks).toContain('seam-lengths');
    for (const ofSteps of [
      'nothing-grows',
      'uneven-steps',
      'step-against-standard',
      'tolerance-overlap',
    ])
      expect(checks).not.toContain(ofSteps);
  });

  it('measures body plus ease', async () => {
    await place.run('grade', 'me.csv', '--style', 'shared-pencil', '--out', 'sum');
    // The style brings 1 cm of ease to the waist and 4 cm to the hip.
    const table = place.read('sum/finished-measurements.csv');
    expect(table).toMatch(/^waist,cm,71$/mu);
    expect(table).toMatch(/^hip,cm,101$/mu);
  });

  it('is the skirt that the same body has in a range', async () => {
    const style = ['--style', 'fixed-dart'];
    await place.run('grade', 'me.csv', '--base', 'me', ...style, '--out', 'alone');
    await place.run(
      ...['grade', 'two.csv', '--base', 'me', '--sizes', 'me', ...style, '--out', 'among'],
    );
    for (const file of ['graded-points.csv', 'finished-measurements.csv', 'size-me.svg'])
      expect(place.read(`alone/${file}`)).toBe(place.read(`among/${file}`));
  });

  it.each(STYLE_NAMES)('fails no check in %s', async (style) => {
    const { status } = await place.run(
      ...['grade', 'me.csv', '--style', style, '--round', '1mm', '--out', `of-${style}`],
    );
    expect(status).toBe(0);
  });

  it('is printed', async () => {
    const { status, stdout } = await place.run('print', 'me.csv', '--out', 'printed');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^me\.csv: 1 size, style/u);
    const bytes = readFileSync(join(place.path, 'printed/print-a4.pdf'));
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
  });

  it('has no steps to check', async () => {
    const { status, stdout } = await place.run('check', 'me.csv');
    expect(status).toBe(0);
    expect(stdout).toContain('me.csv: 1 size, centimeters');
    expect(stdout).toContain('One size has no steps, so there is nothing to compare.');
    expect(stdout).not.toContain('A hip step agrees');
  });

  it('is refused by whoever asks for its rules', async () => {
    place.write('sheet.csv', '# unit: cm\npoint,axis,me,her\nfront.side_waist,dx,0,1\n');
    for (const call of [
      typed('explain me.csv front.side_waist --base me'),
      typed('assess me.csv sheet.csv --base me'),
    ]) {
      const { status, stderr } = await place.run(...call);
      expect([status, stderr]).toEqual([
        2,
        'skirtgrade: me.csv: the chart has one size, so it has no steps and no grade rules. ' +
          'Allowed: two sizes or more. Got: me.\n',
      ]);
    }
  });

  it('is still refused with another base than its own', async () => {
    const { status, stderr } = await place.run('grade', 'me.csv', '--base', 'her', '--out', 'none');
    expect(status).toBe(2);
    expect(stderr).toContain('the range has no such size. Allowed: me. Got: her.');
  });
});

it('a chart of several sizes still needs a base', async () => {
  for (const command of ['grade', 'print']) {
    const { status, stderr } = await place.run(command, 'two.csv', '--out', 'none');
    expect(status).toBe(2);
    expect(stderr).toContain('--base, two.csv: the chart has several sizes');
    expect(stderr).toContain('Allowed: me, her');
  }
});
