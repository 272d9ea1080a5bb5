import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { STYLES, gradeChart, measureOf } from '../../src/index';
import type { Finding, GradeRequest } from '../../src/index';
import { anyChart, chartText, sixteenthsText } from '../skirts';
import { runs } from '../samples';

// Leg 82 cm. With 5 cm of ease the second size is 100 cm at the hip and 92 cm at a hem 10 cm below
// the knee, on the reference body.
const ROWS = {
  waist_girth: [68, 72, 76],
  hip_girth: [91, 95, 99],
  waist_to_hip: [20.5, 20.5, 20.5],
  skirt_length: [65, 65, 65],
};
const HEIGHT = { height: [164, 164, 164] };
const CHART = chartText('cm', { ...ROWS, ...HEIGHT });
const PENCIL = { hip_ease: '5 cm', hem_taper: '2 cm' };

function found(check: string, request: Partial<GradeRequest> = {}): readonly Finding[] {
  const { findings } = gradeChart({ chart: CHART, base: '2', set: PENCIL, ...request });
  return findings.filter((finding) => finding.check === check);
}

function inSize(size: string, findings: readonly Finding[]): Finding | undefined {
  return findings.find((finding) => finding.size === size);
}

describe('the stride', () => {
  it.each(STYLES.map(({ name }) => name))(
    'is told for every size of %s, never as a failure',
    (style) => {
      const findings = found('stride', { style, set: {} });
      expect(findings.map(({ size }) => size).sort()).toEqual(['1', '2', '3']);
      for (const { severity, measured = NaN, expected = NaN } of findings)
        expect(severity).toBe(measured >= expected - 5 ? 'ok' : 'warning');
    },
  );

  // Derived; common practice, no source.
  it('of 100 cm at the hip and 92 cm at the hem is 48.7 cm, and 68.9 cm is wanted', () => {
    const stride = inSize('2', found('stride'));
    expect(stride).toMatchObject({ severity: 'warning', subject: 'hem', quantity: 'length' });
    expect((stride?.measured ?? NaN) / 10).toBeCloseTo(48.7, 1);
    // PMC2943048 table 2: step length / stature 0.422 to 0.433 in two groups.
    expect(stride?.expected).toBeCloseTo(0.42 * 1640, 9);
    expect(stride?.message).toBe(
      'the hem allows a step of about 48.7 cm, and 68.9 cm is wanted, stature 164 cm (given): ' +
        'a narrow hem shortens the stride, and stairs and curbs need more than level walking; ' +
        'open a vent from 14.7 cm above the hem or widen the hem; ' +
        'the model runs a few per cent low',
    );
  });

  it('is a finished measure too', () => {
    const { range, findings } = gradeChart({ chart: CHART, base: '2', set: PENCIL });
    for (const size of range.sizes) {
      const stride = inSize(
        size.label,
        findings.filter(({ check }) => check === 'stride'),
      );
      expect(measureOf(size, 'stride')).toBe(stride?.measured);
    }
  });

  it('says where the stature is only assumed', () => {
    for (const style of ['pencil', 'shared-drop'])
      for (const [rows, words] of [
        [ROWS, 'stature 164 cm (assumed, since the chart gives none)'],
        [{ ...ROWS, ...HEIGHT }, 'stature 164 cm (given)'],
      ] as const)
        for (const { message } of found('stride', { style, chart: chartText('cm', rows) }))
          expect(message).toContain(words);
  });

  it('is that of the stature the style sets', () => {
    const tall = { hip_ease: '5 cm', height: '180 cm' };
    for (const stride of found('stride', { style: 'shared-drop', set: tall })) {
      expect(stride.expected).toBeCloseTo(756, 6);
      expect(stride.message).toContain('stature 180 cm (given)');
    }
  });

  it('is enough where the hem is wide', () => {
    const wide = found('stride', { set: { hip_ease: '5 cm', hem_taper: '-6 cm' } });
    expect(wide.map(({ severity }) => severity)).toEqual(['ok', 'ok', 'ok']);
    for (const { message } of wide) expect(message).not.toContain('narrow');
  });

  it('is measured above the opening where there is one', () => {
    const set = { ...PENCIL, vent_width: '0 cm', stride_wanted: '70 cm', taper_blend: '0 cm' };
    const steps = ['0 cm', '5 cm', '10 cm', '15.5 cm'].map((vent_length) =>
      inSize('2', found('stride', { style: 'shared-pencil', set: { ...set, vent_length } })),
    );
    expect(steps.map((stride) => stride?.severity)).toEqual([
      'warning',
      'warning',
      'warning',
      'ok',
    ]);
    expect(steps.map((stride) => stride?.subject)).toEqual(['hem', 'vent', 'vent', 'vent']);
    const measured = steps.map((stride) => stride?.measured ?? NaN);
    expect(measured).toEqual(measured.toSorted((a, b) => a - b));
    expect(steps[1]?.message).toContain('begin the opening 15.3 cm above the hem');
  });

  it('is longer in a skirt with a wider hem, whatever the chart', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        const [narrow, wide] = ['3 cm', '1 cm'].map((hem_taper) =>
          gradeChart({ chart: sixteenthsText(chart), base: '1', set: { hem_taper } }),
        );
        narrow?.range.sizes.forEach((size, i) => {
          const other = wide?.range.sizes[i];
          if (other === undefined) throw new RangeError('not the same sizes');
          expect(measureOf(other, 'stride')).toBeGreaterThanOrEqual(measureOf(size, 'stride'));
        });
      }),
      { numRuns: runs(5) },
    );
  });
});

describe('a vent', () => {
  const vent = (vent_length: string, vent_width = '4 cm') => ({
    style: 'shared-pencil',
    set: { vent_length, vent_width },
  });

  it('is checked where there is one only', () => {
    for (const style of ['pencil', 'shared-drop'])
      for (const check of ['vent-clear-of-zip', 'vent-length'])
        expect(found(check, { style })).toEqual([]);
  });

  // Common practice, no source: 8 to 10 cm below the end of the zip.
  it.each([
    ['20 cm', 'ok'],
    ['42 cm', 'warning'],
    ['50 cm', 'fail'],
  ])('of %s above the hem of a skirt of 65 cm: clear of the zip %s', (length, severity) => {
    const findings = found('vent-clear-of-zip', vent(length));
    expect(findings.map((finding) => finding.severity)).toEqual([severity, severity, severity]);
  });

  // Common practice, no source: vents of 15 to 30 cm, slits of 10 to 25 cm.
  it.each([
    ['14.9 cm', '4 cm', 'note', 'vent'],
    ['15 cm', '4 cm', 'ok', 'vent'],
    ['30.1 cm', '4 cm', 'note', 'vent'],
    ['10 cm', '0 cm', 'ok', 'slit'],
    ['25.1 cm', '0 cm', 'note', 'slit'],
  ])('of %s and %s wide: length %s', (length, width, severity, subject) => {
    const findings = found('vent-length', vent(length, width));
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ severity, subject, size: '', piece: 'back' });
  });
});
