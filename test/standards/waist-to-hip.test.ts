import { describe, expect, it } from 'vitest';
import ansurText from '../../size-charts/standards/survey-ansur-1988-women-by-hip.csv';
import { waistToHipGrowth } from '../../src/standards/waist-to-hip';

/**
 * Sums of squares and products about the means in cm^2, over the public microdata of the 1988
 * Anthropometric Survey of US Army Personnel (Gordon et al. 1989, NATICK/TR-89/044): 2208 women,
 * hip = buttock circumference, depth = natural waist height less buttock height.
 */
const SUMS = {
  hipHip: 79937.82,
  statureStature: 89283.28,
  hipStature: 30483.17,
  hipDepth: 10059.79,
  statureDepth: 12931.63,
};

/** Least squares on both, by Cramer's rule. */
const { hipHip, statureStature, hipStature, hipDepth, statureDepth } = SUMS;
const DETERMINANT = hipHip * statureStature - hipStature ** 2;
const PER_HIP = (hipDepth * statureStature - statureDepth * hipStature) / DETERMINANT;
const PER_STATURE = (statureDepth * hipHip - hipDepth * hipStature) / DETERMINANT;

describe('the growth of the waist-to-hip depth on measured bodies', () => {
  it('at one stature is the partial slope of the survey, 0.081', () => {
    expect(PER_HIP).toBeCloseTo(0.0812, 4);
    const { growth, compared } = waistToHipGrowth(1000, 0);
    expect(growth).toBeCloseTo(1000 * PER_HIP, -0.5);
    expect(compared).toBe('one stature');
  });

  it('with a stature that grows is the regression on both', () => {
    expect(PER_STATURE).toBeCloseTo(0.1171, 4);
    for (const [hip, stature] of [
      [200, 60],
      [300, -20],
      [80, 100],
    ] as const) {
      const { growth, compared } = waistToHipGrowth(hip, stature);
      expect(growth).toBeCloseTo(hip * PER_HIP + stature * PER_STATURE, 0);
      expect(compared).toBe('statures given');
    }
  });

  it('without a stature is that of the hip alone, which has the taller women in it', () => {
    const { growth, compared } = waistToHipGrowth(1000, undefined);
    expect(growth).toBeCloseTo((1000 * hipDepth) / hipHip, -0.5);
    expect(compared).toBe('all statures');
    const taller = hipStature / hipHip;
    expect(waistToHipGrowth(1000, 1000 * taller).growth).toBeCloseTo(growth, -0.5);
  });

  it('over all statures is near that of the class means, with their counts or without', () => {
    const row = (name: string) =>
      (ansurText.split('\n').find((line) => line.startsWith(`${name},`)) ?? '')
        .split(',')
        .slice(1)
        .map(Number);
    const counts = row('n');
    for (const weights of [counts, counts.map(() => 1)]) {
      const means = leastSquaresSlope(row('hip_girth'), row('waist_to_hip'), weights);
      expect(Math.abs(means - waistToHipGrowth(1, undefined).growth)).toBeLessThan(0.01);
    }
  });
});

function leastSquaresSlope(x: number[], y: number[], weights: number[]): number {
  const sum = (term: (index: number) => number) =>
    weights.reduce((total, weight, index) => total + weight * term(index), 0);
  const at = (values: number[], index: number) => values[index] ?? NaN;
  const total = sum(() => 1);
  const meanX = sum((i) => at(x, i)) / total;
  const meanY = sum((i) => at(y, i)) / total;
  return sum((i) => (at(x, i) - meanX) * (at(y, i) - meanY)) / sum((i) => (at(x, i) - meanX) ** 2);
}
