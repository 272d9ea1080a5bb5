/** A body between sizes, held against the sizes that it is made of and against sums by hand. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { GradeResult, GradeRequest, Piece } from '../../src/index';
import { resultFiles } from '../../src/files/result-files';
import { gradeSpec } from '../../src/jobs/grade-spec';
import { measureOf } from '../../src/grade/graded-pattern';
import { printTables } from '../../src/files/print-tables';
import type { Finding } from '../../src/check/finding';
import { verdictOf } from '../../src/verdict/verdict';
import { expectRefusal } from '../expect-refusal';
import { gradedOnce } from '../graded';
import { someSizes } from '../samples';

const CHART = someSizes(readFileSync('size-charts/demo.csv', 'utf8'), ['2', '8', '12', '16', '24']);
const INCH = 25.4;

function demo(request: Partial<GradeRequest>): GradeResult {
  return gradedOnce({ chart: CHART, file: 'demo.csv', base: '8', ...request });
}

function measured(result: GradeResult, label: string, name: string): number {
  const size = result.range.sizes.find((own) => own.label === label);
  return size === undefined ? NaN : measureOf(size, name);
}

function outlines(result: GradeResult, label: string): readonly (readonly number[])[] {
  const pieces: readonly Piece[] =
    result.range.sizes.find((own) => own.label === label)?.pieces ?? [];
  return pieces.map(({ points }) => points.flatMap(({ x, y }) => [x, y]));
}

const MIXED = ['waist 12', 'hip 16'];
const NAME = 'waist 12, hip 16';

describe.each(['pencil', 'shared-pencil'])('a blend in %s', (style) => {
  const whole = demo({ style });
  const blend = demo({ style, blend: MIXED });

  it('has the waist of one size and the hip of the other', () => {
    for (const [name, size] of [
      ['waist', '12'],
      ['hip', '16'],
      ['center_front_length', '16'],
    ] as const)
      expect(Math.abs(measured(blend, NAME, name) - measured(whole, size, name))).toBeLessThan(
        0.01,
      );
  });

  it('measures what the chart and the ease add up to', () => {
    // The chart: waist 31 in size 12, hip 45 in size 16. Ease: 2 in of hip and none of waist in the
    // quarter method; 1 1/2 in and 3/8 in in the shaped style.
    const [waist, hip] = style === 'pencil' ? [31, 47] : [31.375, 46.5];
    expect(measured(blend, NAME, 'waist')).toBeCloseTo(waist * INCH, 2);
    expect(measured(blend, NAME, 'hip')).toBeCloseTo(hip * INCH, 2);
  });

  it('has side seams of one length and no check that fails', () => {
    const [front, back] = ['side_seam_front', 'side_seam_back'].map((name) =>
      measured(blend, NAME, name),
    );
    expect(Math.abs((front ?? NaN) - (back ?? NaN))).toBeLessThan(0.01);
    expect(blend.findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
    expect(blend.findings.some(({ size }) => size.includes(NAME))).toBe(true);
    expect(blend.seams.length).toBeGreaterThan(0);
    expect(blend.seams.every(({ walks }) => walks.length === 2)).toBe(true);
  });

  it('has the outline of a size that gives both its waist and its hip', () => {
    for (const round of [undefined, '1/16in']) {
      const rounding = round === undefined ? {} : { round };
      const alike = outlines(
        demo({ style, ...rounding, blend: ['waist 12', 'hip 12'] }),
        'waist 12, hip 12',
      );
      const own = outlines(demo({ style, ...rounding }), '12');
      expect(alike.length).toBe(own.length);
      alike.forEach((numbers, i) => {
        expect(numbers.length).toBe(own[i]?.length);
        numbers.forEach((number, k) => {
          expect(Math.abs(number - (own[i]?.[k] ?? NaN))).toBeLessThan(1e-6);
        });
      });
    }
  });

  it('is shown alone, beside the base that its rules start from', () => {
    expect(blend.range.sizes.map(({ label }) => label)).toEqual(['8', NAME]);
    expect(blend.shown.map(({ label }) => label)).toEqual([NAME]);
    const files = resultFiles(blend);
    expect(files.flatMap(({ name }) => /^size-.*/u.exec(name) ?? [])).toEqual([
      'size-waist_12_hip_16.svg',
    ]);
    expect(files.find(({ name }) => name === 'finished-measurements.csv')?.text).toMatch(
      /^measure,unit,"waist 12, hip 16"$/mu,
    );
    const body = printTables(blend)[0]?.rows.find(({ name }) => name === 'waist girth');
    expect(body?.lines.find(({ unit }) => unit === 'in')?.cells).toEqual(['31']);
  });
});

describe('a blend', () => {
  it('that wants another number of darts is told the setting, and of no range to split', () => {
    // Of 46 1/2 in of finished hip and 31 3/4 of waist edge the front takes in a fifth of the half: 1 1/2 in.
    const { findings, range, display } = demo({ style: 'shared-pencil', blend: MIXED });
    const labels = range.sizes.map(({ label }) => label);
    const told = verdictOf(findings, labels, display).decisions.map(({ text }) => text);
    expect(told.filter((text) => text.includes('front_darts=2'))).toHaveLength(1);
    expect(told.join()).not.toContain('split the range');
  });

  it('is told of stretches of its chart by their sizes', () => {
    const { findings, display } = demo({ style: 'pencil', blend: MIXED });
    const found = { ...findings[0], severity: 'warning', size: '12-24' } as const;
    const [decision] = verdictOf([found as Finding], ['8', NAME], display).decisions;
    expect(decision?.text).toMatch(/^Sizes 12-24: /u);
  });

  it('takes the length from a third size', () => {
    const blend = demo({ style: 'pencil', blend: [...MIXED, 'length 2'] });
    expect(measured(blend, `${NAME}, length 2`, 'center_front_length')).toBeCloseTo(
      25.375 * INCH,
      6,
    );
    expect(measured(blend, `${NAME}, length 2`, 'hip')).toBeCloseTo(47 * INCH, 6);
  });

  it('takes the length also where a formula hangs on a row of lengths', () => {
    const request = { style: 'pencil', set: { skirt_length: 'waist_to_knee + 1 in' } };
    const blend = demo({ ...request, blend: [...MIXED, 'length 2'] });
    expect(measured(blend, `${NAME}, length 2`, 'center_front_length')).toBeCloseTo(24 * INCH, 6);
  });

  it('refuses a length that would change nothing, and sizes beside it', () => {
    expectRefusal(
      () => demo({ set: { skirt_length: '26 in' }, blend: [...MIXED, 'length 2'] }),
      'bad-option',
      { field: 'blend' },
      'the length of this skirt is not from the chart',
      'Got: length 2',
    );
    expectRefusal(
      () => demo({ blend: MIXED, sizes: ['8'] }),
      'bad-option',
      { field: 'blend' },
      'drawn alone',
    );
  });

  it('fails where waist and hip make no skirt', () => {
    const { findings } = demo({ style: 'shared-pencil', blend: ['waist 24', 'hip 2'] });
    const failed = findings.filter(({ severity }) => severity === 'fail');
    expect(failed.map(({ check }) => check)).toContain('side-take-up');
    expect(failed.every(({ size }) => size === 'waist 24, hip 2')).toBe(true);
  });

  it('may be the base over again', () => {
    const { findings } = demo({ style: 'shared-pencil', blend: ['waist 8', 'hip 8'] });
    expect(findings.filter(({ severity }) => severity === 'fail')).toEqual([]);
  });

  it('is told to have its own number of darts, and has no step between it and the base', () => {
    const blend = demo({ style: 'shared-pencil', blend: MIXED });
    const [darts] = blend.findings.filter(({ check }) => check === 'dart-number');
    expect(darts?.message).toContain('set front_darts=2');
    expect(gradeSpec(blend, {}).findings).toEqual([]);
    const steps = (result: GradeResult) =>
      result.findings.filter(({ check }) => check === 'grade-break').map(({ size }) => size);
    expect(steps(blend)).toEqual(steps(demo({ style: 'shared-pencil' })));
  });
});
