import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hipAtWaist, intervalAt, waistRange } from '../../src/standards/hip-curve';
import type { PublishedTable } from '../../src/standards/published-table';
import { publishedTable, publishedTables } from '../../src/standards/published-tables';

const TABLES = publishedTables()
  .filter(({ unusable }) => unusable === undefined)
  .map(({ id }) => publishedTable(id));

function tableOf(waist: readonly number[], hip: readonly number[]): PublishedTable {
  const row = (values: readonly number[]) => ({ values, certainty: 'made up for a test' });
  return {
    id: 'sample',
    name: 'Test',
    title: 'Sample',
    kind: 'trade-table',
    year: 2000,
    unit: 'mm',
    sizes: waist.map((_, index) => `${index + 1}`),
    waist: row(waist),
    hip: row(hip),
    notes: [],
  };
}

describe('hipAtWaist', () => {
  it.each(TABLES)('passes through every size of $id', (table) => {
    table.waist.values.forEach((waist, index) =>
      expect(hipAtWaist(table, waist)).toBeCloseTo(table.hip.values[index] ?? NaN, 9),
    );
  });

  it('is straight between two sizes', () => {
    // ASTM D5585-95: waist 28 to 29 1/2 in, hip 38 1/2 to 40 in.
    const table = publishedTable('astm-d5585-95');
    expect(hipAtWaist(table, 28.5 * 25.4)).toBeCloseTo(39 * 25.4, 9);
  });

  it('never extrapolates', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...TABLES),
        fc.double({ min: 0.001, max: 2000, noNaN: true }),
        (table, beyond) => {
          const range = waistRange(table);
          expect(range).toBeDefined();
          if (range === undefined) return;
          expect(hipAtWaist(table, range.least - beyond)).toBeUndefined();
          expect(hipAtWaist(table, range.greatest + beyond)).toBeUndefined();
        },
      ),
    );
  });

  it('takes a waist at the end of the range for inside, whatever its last digit', () => {
    const table = publishedTable('astm-d5585-11e1-curvy');
    expect(hipAtWaist(table, 23.875 * 25.4 - 1e-9)).toBeCloseTo(34 * 25.4, 6);
    expect(hipAtWaist(table, 39 * 25.4 + 1e-9)).toBeCloseTo(48.75 * 25.4, 6);
  });

  it('leaves out a size whose waist repeats or falls', () => {
    const table = tableOf([600, 640, 640, 620, 700], [900, 940, 990, 930, 1000]);
    expect(hipAtWaist(table, 640)).toBe(940);
    expect(hipAtWaist(table, 670)).toBe(970);
    expect(waistRange(table)).toEqual({ least: 600, greatest: 700 });
  });

  it('is undefined everywhere for a table without two waists', () => {
    expect(hipAtWaist(tableOf([], []), 600)).toBeUndefined();
    expect(hipAtWaist(tableOf([600, 600], [900, 910]), 600)).toBeUndefined();
    expect(waistRange(tableOf([], []))).toBeUndefined();
  });
});

describe('intervalAt', () => {
  const table = tableOf([600, 640, 700], [900, 940, 1000]);
  const labels = (waist: number) => {
    const interval = intervalAt(table, waist);
    return interval && [interval.from.size, interval.to.size];
  };

  it('takes the upper interval at a joint and the last one at the end', () => {
    expect(labels(600)).toEqual(['1', '2']);
    expect(labels(639.9)).toEqual(['1', '2']);
    expect(labels(640 - 1e-9)).toEqual(['2', '3']);
    expect(labels(640)).toEqual(['2', '3']);
    expect(labels(700)).toEqual(['2', '3']);
    expect(labels(700.1)).toBeUndefined();
  });
});
