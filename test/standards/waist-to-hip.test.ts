import { expect, it } from 'vitest';
import ansurText from '../../size-charts/standards/survey-ansur-1988-women-by-hip.csv';
import { publishedTable } from '../../src/standards/published-tables';
import { WAIST_TO_HIP_SURVEY, waistToHipSlope } from '../../src/standards/waist-to-hip';

it('states the slope of the 1988 US Army survey, near that of its class means', () => {
  // 1988 Anthropometric Survey of US Army Personnel: 0.126 cm per cm of hip over the microdata.
  const slope = waistToHipSlope(publishedTable(WAIST_TO_HIP_SURVEY));
  expect(slope).toBe(0.126);

  // Least squares through the class means, with and without the class counts as weights.
  const row = (name: string) =>
    (ansurText.split('\n').find((line) => line.startsWith(`${name},`)) ?? '')
      .split(',')
      .slice(1)
      .map(Number);
  const counts = row('n');
  for (const weights of [counts, counts.map(() => 1)]) {
    const means = leastSquaresSlope(row('hip_girth'), row('waist_to_hip'), weights);
    expect(Math.abs(means - slope)).toBeLessThan(0.01);
  }
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

it('refuses a table that states no slope', () => {
  expect(() => waistToHipSlope(publishedTable('astm-d5585-95'))).toThrow(/states no slope/);
});
