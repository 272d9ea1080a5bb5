import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../csv-tables';
import { chartText } from '../skirts';
import { workplace, typed } from './workplace';

const place = workplace();
place.write(
  'chart.csv',
  chartText('in', { waist_girth: [25, 28], hip_girth: [35, 38] }, ['8', '12']),
);

describe('grade --fabric', async () => {
  const { status, stderr, stdout } = await place.run(
    ...typed('grade chart.csv --base 8 --style shared-drop --fabric --out out'),
  );
  const rows = rowsOf(place.read('out/fabric.csv'));

  it('writes the cloth to buy and a drawing of each lay beside the other results', () => {
    expect([status, stderr]).toEqual([0, '']);
    expect(readdirSync(join(place.path, 'out'))).toEqual(
      expect.arrayContaining([
        'nest.svg',
        'lay-shell.svg',
        'lay-lining.svg',
        'lay-interfacing.svg',
      ]),
    );
    expect(stdout).toContain('fabric.csv');
  });

  it('tells eight widths, folded, folded to the middle and open, with and without a nap, for three cloths', () => {
    const kinds = new Set(
      rows.map(({ cloth, width, unit, fold, nap }) => [cloth, width, unit, fold, nap].join()),
    );
    expect(kinds.size).toBe(3 * 8 * 3 * 2);
  });

  it('buys at least what the lay takes, which is at least what no lay goes below', () => {
    const value = (row: Readonly<Record<string, string>>, measure: string): number => {
      const found = rows.find((other) =>
        Object.entries({ ...row, measure }).every(
          ([key, cell]) => ['8', '12', 'note'].includes(key) || other[key] === cell,
        ),
      );
      return Number(found?.['12']);
    };
    const laid = rows.filter(({ measure, ...row }) => measure === 'lay_cm' && row['12'] !== '');
    expect(laid.length).toBeGreaterThan(60);
    for (const row of laid) {
      expect(value(row, 'buy_cm')).toBeGreaterThanOrEqual(Number(row['12']));
      expect(Number(row['12'])).toBeGreaterThanOrEqual(value(row, 'bound_cm') - 0.001);
      expect(value(row, 'bound_cm')).toBeGreaterThanOrEqual(value(row, 'area_bound_cm') - 0.001);
    }
  });
});
