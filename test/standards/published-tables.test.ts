import { describe, expect, it } from 'vitest';
import { CATALOG } from '../../src/standards/catalog';
import { defaultTables } from '../../src/standards/default-tables';
import { tableSource } from '../../src/standards/published-table';
import { publishedTable, publishedTables } from '../../src/standards/published-tables';
import { fromMillimeters } from '../../src/units';
import { chartOf, sampleChart } from './sample-chart';
import { expectRefusal } from '../expect-refusal';

const USABLE = publishedTables().filter(({ unusable }) => unusable === undefined);

function expectUnknown(id: string, ...words: readonly string[]): void {
  const place = { field: 'against' };
  expectRefusal(() => publishedTable(id), 'standard-unknown', place, ...words);
}

describe('publishedTables', () => {
  it('lists every id once, with a title, and says why GOST cannot be used', () => {
    const listed = publishedTables();
    expect(new Set(listed.map(({ id }) => id)).size).toBe(listed.length);
    expect(listed.every(({ title }) => title !== '')).toBe(true);
    expect(listed.filter(({ unusable }) => unusable !== undefined).map(({ id }) => id)).toEqual([
      'gost-31396',
    ]);
  });

  it('puts standards first and the newest edition first among them', () => {
    const standards = publishedTables().filter(({ kind }) => kind === 'standard');
    expect(publishedTables().slice(0, standards.length)).toEqual(standards);
    const years = standards.map(({ year }) => year);
    expect(years).toEqual(years.toSorted((a, b) => b - a));
  });

  it('names the edition that the heading of the file names', () => {
    for (const { table, title, year } of CATALOG) {
      if ('unusable' in table) continue;
      const heading = table.csv.split('\n')[0] ?? '';
      const edition = /^(ASTM|EN|JIS)[^,( ]* [^,( :/]+/.exec(title)?.[0] ?? `${year}`;
      expect(heading).toContain(edition);
    }
  });
});

describe('publishedTable', () => {
  it.each(USABLE.map(({ id }) => id))('reads %s whole', (id) => {
    const table = publishedTable(id);
    expect(table.sizes.length).toBeGreaterThan(3);
    for (const row of [table.waist, table.hip]) {
      expect(row.values).toHaveLength(table.sizes.length);
      expect(row.values.every((value) => value > 500 && value < 1900)).toBe(true);
      expect(row.certainty).not.toBe('');
    }
  });

  it('keeps the certainty of each row apart', () => {
    // The waist rows were read on the publisher's preview, the hip rows come second-hand.
    const table = publishedTable('astm-d5585-11e1-curvy');
    expect(table.waist.certainty).toMatch(/^read on the publisher's own preview/);
    expect(table.hip.certainty).toMatch(/^second-hand/);
    expect(tableSource(table)).toMatch(/^ASTM D5585-11e1.*waist: read on .*hip: second-hand/);
    expect(publishedTable('astm-d5585-95').hip.certainty).toMatch(/^second-hand/);
    expect(publishedTable('en-13402-3').hip.certainty).toMatch(/^from memory, unverified/);
    expect(publishedTable('ansur-1988').waist.certainty).toMatch(/NOT a size standard$/);
  });

  it('keeps only the four sizes of JIS L 4005 whose waist is known', () => {
    const table = publishedTable('jis-l-4005');
    expect(table.sizes).toEqual(['3', '5', '7', '9']);
    expect(table.waist.values).toEqual([560, 580, 610, 640]);
    expect(table.hip.values).toEqual([850, 870, 890, 910]);
  });

  it('gives the depth row of the survey and of nothing else', () => {
    const withDepth = USABLE.filter(({ id }) => publishedTable(id).waistToHip !== undefined);
    expect(withDepth.map(({ id }) => id)).toEqual(['ansur-1988']);
    expect(publishedTable('ansur-1988').waistToHip?.values[0]).toBeCloseTo(202.8, 9);
  });

  it('accepts any case and an unambiguous beginning', () => {
    expect(publishedTable(' ASTM-D5585-95 ').id).toBe('astm-d5585-95');
    expect(publishedTable('astm-d5585-11e1-c').id).toBe('astm-d5585-11e1-curvy');
    expect(publishedTable('en').id).toBe('en-13402-3');
  });

  it('refuses an unknown name and lists the allowed ones', () => {
    expectUnknown('bs-3666', ...publishedTables().map(({ id }) => id));
    expectUnknown('');
  });

  it('refuses a beginning that two tables share and lists the two', () => {
    expectUnknown('astm-d5585-11e1', 'Allowed: astm-d5585-11e1-curvy, astm-d5585-11e1-straight.');
  });

  it('says plainly that GOST has no waist to compare with', () => {
    expectUnknown('gost', 'waist girths are not known');
    expect(() => publishedTable('gost')).not.toThrow(/Allowed:[^.]*gost/);
  });
});

describe('figures of the tables', () => {
  const inches = (id: string, girth: 'waist' | 'hip') =>
    publishedTable(id)[girth].values.map((mm) => fromMillimeters(mm, 'in'));
  const steps = (values: readonly number[]) =>
    values.slice(1).map((value, index) => value - (values[index] ?? NaN));
  const drops = (id: string) =>
    inches(id, 'hip').map((hip, index) => hip - (inches(id, 'waist')[index] ?? NaN));
  const near = (actual: readonly number[], expected: readonly number[]) => {
    expect(actual).toHaveLength(expected.length);
    actual.forEach((value, index) => expect(value).toBeCloseTo(expected[index] ?? NaN, 9));
  };

  it('has the waist steps of ASTM D5585-11e1 for both bodies', () => {
    // ASTM D5585-11e1, publisher's preview, Table 1.
    const published = [0.75, 0.75, 0.75, 0.875, 1, 1, 1.75, 1.75, 2, 2.25, 2.25];
    near(steps(inches('astm-d5585-11e1-curvy', 'waist')), published);
    near(steps(inches('astm-d5585-11e1-straight', 'waist')), published);
  });

  it('has the steps and the drop of the 1968 home-pattern table', () => {
    // US pattern-industry misses sizing of 1968, as tabulated on sewingscholar.blogspot.com (2011).
    near(steps(inches('home-misses-1968', 'waist')), [1, 1, 1.5, 1.5, 2, 2, 2]);
    near(steps(inches('home-misses-1968', 'hip')), [1, 1, 1.5, 2, 2, 2, 2]);
    near(drops('home-misses-1968'), [9.5, 9.5, 9.5, 9.5, 10, 10, 10, 10]);
  });

  it('has a drop that shrinks in ASTM D6960-16 and holds in D6960-04', () => {
    // ASTM D6960/D6960M-16 and D6960-04, second-hand transcriptions.
    const shrinking = drops('astm-d6960-16');
    expect(shrinking[0]).toBeCloseTo(5, 9);
    expect(shrinking.at(-1)).toBeCloseTo(3.625, 9);
    near(drops('astm-d6960-04'), new Array<number>(10).fill(10));
  });

  it('steps by 4 then 6 cm at the waist and 4 then 5 cm at the hip in EN 13402-3', () => {
    // EN 13402-3:2004 as remembered: unverified, see the file.
    const table = publishedTable('en-13402-3');
    near(steps(table.waist.values), [40, 40, 40, 40, 40, 40, 40, ...new Array<number>(8).fill(60)]);
    near(steps(table.hip.values), [40, 40, 40, 40, 40, 40, 40, ...new Array<number>(8).fill(50)]);
  });
});

describe('defaultTables', () => {
  it('takes the newest standards that cover a step of the chart, three at most', () => {
    // The upper sizes reach into the plus table of 2004, which begins at 31 1/2 in.
    expect(defaultTables(chartOf(publishedTable('astm-d5585-95')))).toEqual([
      'astm-d5585-11e1-curvy',
      'astm-d5585-11e1-straight',
      'astm-d6960-04',
    ]);
    // The misses bodies reach to 39 and 40 1/2 in of waist, the plus table begins at 37 1/2 in.
    expect(defaultTables(chartOf(publishedTable('astm-d6960-16')))).toEqual([
      'astm-d6960-16',
      'astm-d5585-11e1-curvy',
      'astm-d5585-11e1-straight',
    ]);
  });

  it('takes none for a chart beyond every standard, or without a waist', () => {
    const large = { waist_girth: [180, 185], hip_girth: [190, 195] };
    expect(defaultTables(sampleChart('cm', ['A', 'B'], large))).toEqual([]);
    expect(defaultTables(sampleChart('cm', ['A', 'B'], { hip_girth: [90, 95] }))).toEqual([]);
  });

  it('never takes a survey, a trade table or figures from memory unasked', () => {
    const everywhere = Array.from({ length: 60 }, (_, index) => 50 + 2 * index);
    const chart = sampleChart('cm', everywhere.map(String), { waist_girth: everywhere });
    for (const id of defaultTables(chart)) {
      const table = publishedTable(id);
      expect(table.kind).toBe('standard');
      expect(tableSource(table)).not.toContain('from memory');
    }
  });
});
