/** Inches are told as they are typed: a ruler in sixteenths is read in fractions, no source. */
import { describe, expect, it } from 'vitest';
import { gradeChart, readChart } from '../../src/index';
import { isInFractions } from '../../src/chart/size-chart';
import { hasFractions } from '../../src/table/typed-fractions';
import { showLength } from '../../src/units';

describe('a fraction', () => {
  it.each(['26 1/2', '26-1/2', '7/8', '26½', '-3/16', 'a,1/4,0', '5⁄8', '# unit: in\nw,1/2'])(
    'is typed in %j',
    (text) => {
      expect(hasFractions(text)).toBe(true);
    },
  );
  it.each([
    '26.5',
    '26',
    '11/27/2026',
    '2026/8',
    '# moves in 1/8 in\nw,2',
    '# 1/2\n',
    'a/b',
    '8/10',
  ])('is none in %j', (text) => {
    expect(hasFractions(text)).toBe(false);
  });
});

describe('a chart', () => {
  const chart = (half: string): string =>
    `# unit: in\nmeasurement,8,10\nwaist_girth,26${half},27${half}\nhip_girth,36${half},37${half}\n`;
  const message = (half: string): string =>
    gradeChart({ chart: chart(half), base: '8', style: 'pencil' }).findings.find(
      ({ check, subject, size }) =>
        check === 'finished-girth' && subject === 'waist' && size === '8',
    )?.message ?? '';

  it('in fractions is told in fractions, and one in decimals in decimals', () => {
    expect(isInFractions(readChart(chart(' 1/2'), 'chart.csv'))).toBe(true);
    expect(isInFractions(readChart(chart('.5'), 'chart.csv'))).toBe(false);
    expect(message(' 1/2')).toContain('26 1/2 in');
    expect(message('.5')).toContain('26.5 in');
  });
});

it('a half at the last decimal is rounded alike however its length was found', () => {
  const display = { unit: 'in', fractions: false } as const;
  // 1/16 in and 3/80 in, and what arithmetic makes of them.
  for (const mm of [1.5875, 1.5875 - 1e-15, 26.9875 - 25.4]) {
    expect(showLength(mm, display)).toBe('0.063 in');
    expect(showLength(-mm, display)).toBe('-0.063 in');
  }
  expect(showLength(0.0375 * 25.4, display)).toBe('0.038 in');
});
