import { describe, expect, it } from 'vitest';
import { checkWaistToHip } from '../../src/check/chart-waist-to-hip';
import { sampleChart } from '../standards/sample-chart';

const CENTIMETERS = { unit: 'cm', fractions: false } as const;

type Cells = readonly (number | null)[];

function findings(depths: Cells, hips: Cells = [90, 94, 98], heights?: Cells) {
  const rows = { hip_girth: hips, waist_to_hip: depths };
  const height = heights === undefined ? undefined : { stature: heights };
  const chart = sampleChart('cm', ['A', 'B', 'C'], { ...rows, ...height });
  return checkWaistToHip(chart, CENTIMETERS);
}

describe('the growth of the waist-to-hip depth', () => {
  // 1988 Anthropometric Survey of US Army Personnel, women, from the sums of squares and products of
  // test/standards/waist-to-hip.test.ts: 0.081 for 1 of hip and 0.117 for 1 of stature together,
  // 0.126 for 1 of hip alone.
  it.each([
    [[164, 164, 164], 0.081, "of one stature, as the chart's stature stays, it grows 0.081"],
    // 0.081 + 0.117 * 4 / 8.
    [[164, 166, 168], 0.1395, 'whose stature grows 4 cm as in the chart it grows 0.14'],
    [undefined, 0.126, 'of all statures, since the chart gives no stature, it grows 0.126'],
    [[164, null, 164], 0.126, 'of all statures, since the chart gives no stature, it grows 0.126'],
  ])('is a note beside that of the bodies of its heights: %j', (heights, expected, words) => {
    const [finding, ...others] = findings([20, 20.3, 20.6], [90, 94, 98], heights);
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ severity: 'note', quantity: 'number' });
    expect(finding?.measured).toBeCloseTo(0.6 / 8, 9);
    expect(finding?.expected).toBeCloseTo(expected, 9);
    expect(finding?.message).toBe(
      'over the whole range the waist-to-hip depth grows 0.6 cm while the hip grows 8 cm, ' +
        `0.075 for 1 of hip; on measured bodies ${words}`,
    );
  });

  it('is a note where the depth stays, as many charts have it', () => {
    expect(findings([20, 20, 20]).map(({ severity }) => severity)).toEqual(['note']);
  });

  it('is a warning above three times that of the bodies, or below zero', () => {
    const severity = (last: number, heights?: Cells) =>
      findings([20, 20, last], [90, 94, 98], heights).map((finding) => finding.severity);
    const steady = [164, 164, 164];
    expect(severity(20 + 8 * 3 * 0.126)).toEqual(['note']);
    expect(severity(20 + 8 * 3 * 0.126 + 0.01)).toEqual(['warning']);
    expect(severity(20 + 8 * 3 * 0.081, steady)).toEqual(['note']);
    expect(severity(20 + 8 * 3 * 0.081 + 0.01, steady)).toEqual(['warning']);
    expect(severity(19.99)).toEqual(['warning']);
    expect(severity(19.99, steady)).toEqual(['warning']);
  });

  it('may shrink only where women as much shorter have it shallower', () => {
    const shorter = [164, 160, 154];
    // 8 * 0.081 - 10 * 0.117 = -0.522 cm.
    const severity = (last: number) =>
      findings([20, 20, last], [90, 94, 98], shorter).map((finding) => finding.severity);
    expect(severity(19.48)).toEqual(['note']);
    expect(severity(19.47)).toEqual(['warning']);
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
