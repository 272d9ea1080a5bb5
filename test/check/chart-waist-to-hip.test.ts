import { describe, expect, it } from 'vitest';
import { checkWaistToHip } from '../../src/check/chart-waist-to-hip';
import { sampleChart } from '../standards/sample-chart';

const CENTIMETERS = { unit: 'cm', fractions: false } as const;

function findings(depths: readonly (number | null)[], hips: readonly number[] = [90, 94, 98]) {
  const chart = sampleChart('cm', ['A', 'B', 'C'], { hip_girth: hips, waist_to_hip: depths });
  return checkWaistToHip(chart, CENTIMETERS);
}

describe('the growth of the waist-to-hip depth', () => {
  // 1988 Anthropometric Survey of US Army Personnel, women: 0.126 cm per cm of hip.
  it('is a note beside the slope of the survey', () => {
    const [finding, ...others] = findings([20, 20.3, 20.6]);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ severity: 'note', expected: 0.126, quantity: 'number' });
    expect(finding?.measured).toBeCloseTo(0.6 / 8, 9);
    expect(finding?.message).toBe(
      'over the whole range the waist-to-hip depth grows 0.6 cm while the hip grows 8 cm, ' +
        '0.075 for 1 of hip; on measured bodies it grows 0.126',
    );
  });

  it('is a note where the depth stays, as many charts have it', () => {
    expect(findings([20, 20, 20]).map(({ severity }) => severity)).toEqual(['note']);
  });

  it('is a warning above three times the slope, or below zero', () => {
    const severity = (last: number) => findings([20, 20, last]).map((finding) => finding.severity);
    expect(severity(20 + 8 * 3 * 0.126)).toEqual(['note']);
    expect(severity(20 + 8 * 3 * 0.126 + 0.01)).toEqual(['warning']);
    expect(severity(19.99)).toEqual(['warning']);
  });

  it('is not judged without a complete row or a hip that grows', () => {
    expect(findings([20, null, 20.6])).toEqual([]);
    expect(findings([20, 20.3, 20.6], [90, 90, 90])).toEqual([]);
    expect(checkWaistToHip(sampleChart('cm', ['A'], { hip_girth: [90] }), CENTIMETERS)).toEqual([]);
  });
});

describe('the waist-to-hip depth itself', () => {
  it('is a warning outside 15 to 30 cm, blank cells or not', () => {
    // One wearer's depth was 28 cm; common practice, no source, for the bounds.
    const outside = (depths: readonly (number | null)[]) =>
      findings(depths).filter(({ check }) => check === 'measurement-range');
    expect(outside([15, 28, 30])).toEqual([]);
    expect(outside([14.9, null, 20]).map(({ severity, size }) => [severity, size])).toEqual([
      ['warning', 'A'],
    ]);
    expect(outside([20, 20, 30.1])[0]).toMatchObject({ size: 'C', expected: 300 });
  });
});
