import { describe, expect, it } from 'vitest';
import { CATALOG } from '../../src/standards/catalog';
import { tableSource } from '../../src/standards/published-table';
import { publishedTable, publishedTables } from '../../src/standards/published-tables';
import { fromMillimeters } from '../../src/units';
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
    const usable = publishedTables().filter(({ unusable }) => unusable === undefined);
    expectUnknown('bs-3666', ...usable.map(({ id }) => id));
    expectUnknown('JIS, A type', 'Did you mean jis-l-4005?');
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
    // ASTM D6960/D6960M-16 and D6960-04, second-hand copies.
    const shrinking = drops('astm-d6960-16');
    expect(shrinking[0]).toBeCloseTo(5, 9);
    expect(shrinking.at(-1)).toBeCloseTo(3.625, 9);
    near(drops('astm-d6960-04'), new Array<number>(10).fill(10));
  });

  it('has the drop and the one size of EN 13402-3 that were seen; its hips are from memory', () => {
    // Seen: bust less waist is 16 cm in every size, bust steps of 4 and then 6 cm, and one size of
    // 88-72-96 cm (see the file). The sizes are named by their bust, so the waists follow from their
    // names. The hips of all other sizes are from memory and have nothing outside to be held against.
    const table = publishedTable('en-13402-3');
    near(
      table.waist.values,
      table.sizes.map((bust) => (Number(bust) - 16) * 10),
    );
    const busts = steps(table.sizes.map(Number));
    expect([...new Set(busts)]).toEqual([4, 6]);
    expect(table.hip.values[table.sizes.indexOf('88')]).toBe(960);
  });

  it('has a hip step that grows at the top of the pre-1958 table while the waist step stays 2 in', () => {
    // Second-hand, two sources: see the file.
    near(steps(inches('home-pre-1958', 'waist')).slice(-4), [2, 2, 2, 2]);
    near(steps(inches('home-pre-1958', 'hip')).slice(-4), [2, 2.5, 2.5, 3]);
  });
});
