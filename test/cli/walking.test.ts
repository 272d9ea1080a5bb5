import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../csv-tables';
import { LONG, someSizes } from '../samples';
import { chartText } from '../skirts';
import { workplace } from './workplace';

const place = workplace();
const DEMO = readFileSync(resolve('size-charts/demo.csv'), 'utf8');
// In passing both ends and the base.
const FEW = ['2', '12', '24'];
const COUNT = LONG ? 12 : FEW.length;
place.write('demo.csv', someSizes(DEMO, FEW));

/** The findings of one check in what `grade` wrote, one a size. */
function findings(folder: string, check: string) {
  const text = place.read(`${folder}/findings.csv`);
  const rows: Record<string, string>[] = parse(text, { columns: true });
  return rows.filter((row) => row.check === check);
}

async function graded(style: string, chart = 'demo.csv', base = '12'): Promise<string> {
  const folder = `${chart}-${style}`;
  const options = ['--base', base, '--style', style, '--unit', 'cm', '--out', folder];
  const { status } = await place.run('grade', chart, ...options);
  expect(status).toBe(0);
  return folder;
}

describe('the room to walk in the demo', () => {
  it('is 46 cm in size 12 of the pencil, as worked by hand, and no size is praised', async () => {
    // In mm. Hip 41 1/2 in and 2 in of ease, less four side edges of 1 in: 39 1/2 in at the hem,
    // 26 in below the waist. Half of 65 in is the leg, the knee 23 1/4 in below the waist is 380/820
    // of a leg below the hip joint. Knee girth 36 cm and 0.302 for each of hip beyond 95 cm, the
    // calf 35/36 of it down to 48/82 of a leg.
    const [hem, leg] = [39.5 * 25.4, (65 / 2) * 25.4];
    const depth = 26 * 25.4 - (23.25 * 25.4 - (380 / 820) * leg);
    const calf = (360 + 0.302 * (41.5 * 25.4 - 950)) * (35 / 36);
    const along = Math.sqrt(((hem - calf) / 2) ** 2 - (calf / Math.PI) ** 2);
    const step = (0.88 * along * leg) / depth / 10;
    expect(step).toBeCloseTo(46.1, 1);

    const folder = await graded('pencil');
    const strides = findings(folder, 'stride');
    expect(strides).toHaveLength(COUNT);
    const [middle] = strides.filter(({ size }) => size === '12');
    expect(Math.abs(Number(middle?.measured) - step)).toBeLessThan(0.05);
    expect(middle?.message).toContain('(54.4 cm at the very best)');
    expect(middle?.message).toContain('errs short, or up to 2 cm long on slim hips');
    // PMC2943048 table 2: .433 of body height.
    expect(Number(middle?.expected)).toBeCloseTo(0.433 * 65 * 2.54, 3);
    for (const { severity } of strides) expect(severity).toBe('warning');
    const measures = rowsOf(place.read(`${folder}/finished-measurements.csv`));
    const stride = measures.find(({ measure }) => measure === 'stride');
    expect(Number(stride?.['12'])).toBeCloseTo(Number(middle?.measured), 3);
  });

  it('is not enough in any size of the straight skirts', async () => {
    for (const style of ['straight', 'shared-drop'])
      for (const { severity } of findings(await graded(style), 'stride'))
        expect(severity).toBe('warning');
  });

  it('round the knee is told against about 125 cm', async () => {
    // The same abstract as for the opening below. Side edges run straight from the hip line, 8 in
    // below the waist, to the hem 18 in lower; the knee is 15 1/4 in below the hip line.
    const knee = 2.54 * (43.5 - (4 * 15.25) / 18);
    const [middle] = findings(await graded('pencil'), 'knee-girth').filter(
      ({ size }) => size === '12',
    );
    expect(Number(middle?.measured)).toBeCloseTo(knee, 2);
    expect(middle).toMatchObject({ severity: 'note', expected: '125' });
    expect(middle?.message).toContain('stairs and buses');
    const wide = findings(await graded('shared-a-line'), 'knee-girth');
    expect(new Set(wide.map(({ severity }) => severity))).toEqual(new Set(['ok']));
  });

  it('is enough in every size where the shared pencil opens 10 in above its hem', async () => {
    const folder = await graded('shared-pencil');
    const strides = findings(folder, 'stride');
    expect(strides.map(({ severity }) => severity)).toEqual(Array(COUNT).fill('ok'));
    for (const { measured, expected } of strides)
      expect(Number(measured)).toBeGreaterThanOrEqual(Number(expected));
    expect(findings(folder, 'vent-length')[0]).toMatchObject({ measured: '25.4' });
    // "Some Function of Tight Skirt" (Japanese), cir.nii.ac.jp/crid/1050845763132163456, abstract
    // only: back closed at about 26 cm, at least 10 cm above the knee.
    for (const { severity, message } of findings(folder, 'vent-above-knee')) {
      expect(severity).toBe('ok');
      expect(message).toContain('about 26 cm (10 1/4 in), at least 10 cm (4 in) above the knee');
    }
  });
});

describe('straight skirts of the girths of a remembered table', () => {
  // From memory of a textbook on skirts, unverified: for a step of 67 cm, 94 cm 10 cm above the knee,
  // 100 at the knee, 126 at the upper calf, 134 at the lower calf, 146 at the ankle.
  const GIRTHS = [94, 100, 126, 134, 146];
  const LENGTHS = [45, 55, 65, 75, 91];
  const rows = {
    height: [164, 164, 164, 164, 164],
    waist_girth: GIRTHS.map((girth) => girth - 28),
    hip_girth: GIRTHS.map((girth) => girth - 4),
    waist_to_hip: [20, 20, 20, 20, 20],
    waist_to_knee: [55, 55, 55, 55, 55],
    thigh_girth: [57, 57, 57, 57, 57],
    knee_girth: [36, 36, 36, 36, 36],
    calf_girth: [35, 35, 35, 35, 35],
    skirt_length: LENGTHS,
  };
  place.write('remembered.csv', chartText('cm', rows));

  it('allow no more than its 67 cm, and 56 at least', async () => {
    const folder = await graded('shared-drop', 'remembered.csv', '2');
    const measures = rowsOf(place.read(`${folder}/finished-measurements.csv`));
    const hem = measures.find(({ measure }) => measure === 'hem');
    const strides = findings(folder, 'stride').toSorted((a, b) => Number(a.size) - Number(b.size));
    expect(strides).toHaveLength(5);
    GIRTHS.forEach((girth, i) => {
      expect(Number(hem?.[`${i + 1}`])).toBeCloseTo(girth, 0);
      const { severity, measured } = strides[i] ?? {};
      expect(severity).toBe('warning');
      expect(Number(measured)).toBeLessThanOrEqual(67);
      expect(Number(measured)).toBeGreaterThan(56);
    });
  });
});

describe('the words about stride_opening', () => {
  it('say what it does: as high as needed, in steps, and never under a least', async () => {
    const { status, stdout } = await place.run('styles', 'shared-pencil');
    expect(status).toBe(0);
    const text = stdout.replaceAll(/\s+/g, ' ');
    expect(text).toContain(
      'rounded up to vent_step and never under vent_least, or 0 where no size needs any',
    );
    expect(text).toContain('vent_step = 0.5 cm; in a chart in inches 1/4 in (');
    expect(text).toContain('vent_least = 15 cm; in a chart in inches 6 in (');
    expect(text).toContain('stride_wanted = 0.433*stature');
    expect(text).not.toContain('just far enough');
  });
});

describe('the growth of the waist-to-hip depth', () => {
  // 1988 Anthropometric Survey of US Army Personnel: see test/standards/waist-to-hip.test.ts.
  it.each([
    [
      'stays',
      /^stature/m,
      'stature',
      "of one stature, as the chart's stature stays, it grows 0.081",
    ],
    ['is not given', /^stature.*\n/m, '', 'since the chart gives no stature, it grows 0.126'],
    [
      'grows',
      /^stature.*$/m,
      'stature,62,62.5,63,63.5,64,64.5,65,65.5,66,66.5,67,67.5',
      // 0.081 + 0.117 * 5.5 / 18.
      'whose stature grows 5 1/2 in as in the chart it grows 0.117',
    ],
  ])('is set beside the bodies that fit, where the height %s', async (_how, row, other, words) => {
    place.write('bodies.csv', DEMO.replace(row, other));
    const { status, stdout } = await place.run('check', 'bodies.csv', '--verbose');
    expect(status).toBe(0);
    expect(stdout.replaceAll(/\s+/g, ' ')).toContain(words);
  });
});
