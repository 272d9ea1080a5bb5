/** No table that was published, and no demo chart, is doubted as a chart. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkChart } from '../../src/check/chart';
import { readChart } from '../../src/chart/read-chart';
import type { SizeChart } from '../../src/chart/size-chart';
import { publishedTable, publishedTables } from '../../src/standards/published-tables';
import { chartOf } from '../standards/sample-chart';

const CM = { unit: 'cm', fractions: false } as const;

const DEMO = readChart(readFileSync('size-charts/demo.csv', 'utf8'), 'demo.csv');

const TABLES = publishedTables()
  .filter(({ unusable }) => unusable === undefined)
  .map(({ id }) => publishedTable(id));

function grave(chart: SizeChart): string[] {
  return checkChart(chart, CM)
    .filter(({ severity }) => severity === 'warning' || severity === 'fail')
    .map(({ check, subject, size }) => `${check} ${subject} ${size}`);
}

describe('no finding is graver than a note', () => {
  it('for the demo chart and every published table', () => {
    expect(TABLES.length).toBeGreaterThanOrEqual(10);
    for (const chart of [DEMO, ...TABLES.map(chartOf)]) expect(grave(chart)).toEqual([]);
  });
});
