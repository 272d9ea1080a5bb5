import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import misses2011 from '../../size-charts/standards/astm-d5585-11e1-misses.csv';
import misses1995 from '../../size-charts/standards/astm-d5585-95-misses.csv';
import { checkAgainstStandard as checkAgainst } from '../../src/check/chart-against-standard';
import { compareRange, compareSteps } from '../../src/check/chart-compare';
import { comparedTables } from '../../src/check/compared-tables';
import type { SizeChart } from '../../src/chart/size-chart';
import type { PublishedTable } from '../../src/standards/published-table';
import { hipAtWaist, waistRange } from '../../src/standards/hip-curve';
import { publishedTable, publishedTables } from '../../src/standards/published-tables';
import type { LengthDisplay, LengthUnit } from '../../src/units';
import { fromMillimeters } from '../../src/units';
import { chartOf, sampleChart } from '../standards/sample-chart';

const INCHES = { unit: 'in', fractions: true } as const;
const USABLE = publishedTables()
  .filter(({ unusable }) => unusable === undefined)
  .map(({ id }) => id);

/** The findings about a table that was asked for by its name. */
function checkAgainstStandard(chart: SizeChart, table: PublishedTable, display: LengthDisplay) {
  return comparedTables(chart, [table.id]).flatMap((one) => checkAgainst(chart, one, display));
}

/** The steps of a row in whole eighths of an inch, straight from the text of the file. */
function eighths(text: string, row: string): number[] {
  const line = text.split('\n').find((candidate) => candidate.startsWith(`${row},`)) ?? '';
  const values = line
    .split(',')
    .slice(1)
    .map((cell) => {
      const [whole = '', thousandths = '0'] = cell.trim().split('.');
      return Number(whole) * 8 + Number(thousandths.padEnd(3, '0')) / 125;
    });
  expect(values.every(Number.isInteger)).toBe(true);
  return values.slice(1).map((value, index) => value - (values[index] ?? NaN));
}

describe('a standard fed back as a chart', () => {
  it.each([
    // ASTM D5585-95; ASTM D5585-11e1, Table 1, both bodies.
    ['astm-d5585-95', misses1995, 'waist_girth', 'hip_girth'],
    ['astm-d5585-11e1-curvy', misses2011, 'waist_girth_curvy', 'hip_girth_curvy'],
    ['astm-d5585-11e1-straight', misses2011, 'waist_girth_straight', 'hip_girth_straight'],
  ])(
    '%s has the steps of its text, in exact eighths, and no difference',
    (id, text, waist, hip) => {
      const table = publishedTable(id);
      const compared = compareSteps(chartOf(table), table);
      const waistSteps = eighths(text, waist);
      const hipSteps = eighths(text, hip);
      expect(compared).toHaveLength(waistSteps.length);
      compared.forEach(({ chart, table: given }, index) => {
        const waistStep = ((waistSteps[index] ?? NaN) * 25.4) / 8;
        const hipStep = ((hipSteps[index] ?? NaN) * 25.4) / 8;
        expect([given?.from, given?.to]).toEqual([chart.from.size, chart.to.size]);
        for (const value of [chart.waist, given?.waist]) expect(value).toBeCloseTo(waistStep, 9);
        for (const value of [chart.hip, given?.hip, given?.hipGrowth])
          expect(value).toBeCloseTo(hipStep, 9);
        expect(given?.difference).toBeCloseTo(0, 9);
        expect(given?.agrees).toBe(true);
      });
    },
  );

  it.each(USABLE)('%s agrees with itself, steps and drop', (id) => {
    const table = publishedTable(id);
    const findings = checkAgainstStandard(chartOf(table), table, INCHES);
    // One says that the table is the chart, one a step, one the range, two the drop at its ends.
    expect(findings).toHaveLength(1 + table.sizes.length - 1 + 1 + 2);
    const [same, ...others] = findings;
    expect(same?.severity).toBe('note');
    expect(others.every(({ severity }) => severity === 'ok')).toBe(true);
    expect(same?.message).toContain(`your chart is ${table.name}, cell for cell`);
    expect(others.every(({ message }) => /difference (of )?0 in/.test(message))).toBe(true);
    expect(findings.every(({ source }) => source.includes(table.waist.certainty))).toBe(true);
  });
});

describe('checkAgainstStandard', () => {
  const table = publishedTable('astm-d5585-95');

  it('says a step in one plain sentence', () => {
    // ASTM D5585-95: size 8 is 27 and 37 1/2 in, size 10 is 28 and 38 1/2 in.
    const chart = sampleChart('in', ['8', '10'], {
      waist_girth: [27, 28],
      hip_girth: [37.5, 38.5],
    });
    const [same, step] = checkAgainstStandard(chart, table, INCHES);
    expect(same?.message).toContain('cell for cell: 8 to 10');
    expect(step?.message).toBe(
      'from 8 to 10 the waist grows 1 in and the hip 1 in; ' +
        "the table's own step there, 8 to 10, is 1 in and 1 in, and it gives 1 in of hip for the " +
        'same waist growth: a difference of 0 in, within 1/4 in',
    );
    expect(step).toMatchObject({ severity: 'ok', size: '8-10', subject: 'astm-d5585-95' });
  });

  it('allows a quarter of the step, says so, and makes a larger difference a note', () => {
    // The table's 8 to 10 is 1 in, its 16 to 18 is 2 in: 1/4 in and 1/2 in are allowed.
    const told = (waists: [number, number], hips: [number, number]) => {
      const chart = sampleChart('in', ['A', 'B'], { waist_girth: waists, hip_girth: hips });
      const step = checkAgainstStandard(chart, table, INCHES).find(
        ({ check }) => check === 'step-against-standard',
      );
      return [step?.severity, step?.message.replace(/^.* of (?=.*(within|beyond))/u, '')];
    };
    expect(told([27, 28], [37.5, 38.75])).toEqual(['ok', '1/4 in, within 1/4 in']);
    expect(told([27, 28], [37.5, 38.25])).toEqual(['ok', '-1/4 in, within 1/4 in']);
    expect(told([27, 28], [37.5, 38.8125])).toEqual(['note', '5/16 in, beyond 1/4 in']);
    expect(told([32.5, 34.5], [43, 45.5])).toEqual(['ok', '1/2 in, within 1/2 in']);
    expect(told([32.5, 34.5], [43, 45.5625])).toEqual(['note', '9/16 in, beyond 1/2 in']);
  });

  it('allows 1/16 in where the table hardly grows', () => {
    const chart = sampleChart('in', ['A', 'B'], {
      waist_girth: [27, 27.125],
      hip_girth: [37.5, 37.625],
    });
    expect(compareSteps(chart, table)[0]?.table?.tolerance).toBeCloseTo(25.4 / 16, 9);
  });

  it('says that a step spans several of the table’s, and how many', () => {
    // 25 to 28 in are the table's 4, 6, 8 and 10: three steps of 1 in.
    const three = sampleChart('in', ['S', 'M'], { waist_girth: [25, 28], hip_girth: [35.5, 38.5] });
    expect(compareSteps(three, table)[0]?.table).toMatchObject({ from: '4', to: '10' });
    expect(compareSteps(three, table)[0]?.table?.spans).toBeCloseTo(3, 9);
    expect(
      checkAgainstStandard(three, table, INCHES).find(({ check }) => check.startsWith('step'))
        ?.message,
    ).toContain('that spans 3 steps of the table, whose 4 to 10 is 3 in and 3 in');
    // 25 1/2 to 27 in: half of 4 to 6, and 6 to 8.
    const half = sampleChart('in', ['S', 'M'], { waist_girth: [25.5, 27], hip_girth: [36, 37.5] });
    expect(compareSteps(half, table)[0]?.table?.spans).toBeCloseTo(1.5, 9);
  });

  it('counts a hip that grows more than the table as a positive difference', () => {
    const chart = sampleChart('in', ['8', '10'], { waist_girth: [27, 28], hip_girth: [37.5, 39] });
    expect(compareSteps(chart, table)[0]?.table?.difference).toBeCloseTo(12.7, 9);
    expect(checkAgainstStandard(chart, table, INCHES)[0]?.message).toContain(
      'difference of 1/2 in',
    );
  });

  it('tells the drop once where the table covers one size only', () => {
    const chart = sampleChart('in', ['A', 'B'], { waist_girth: [36, 40], hip_girth: [46, 50] });
    const checks = checkAgainstStandard(chart, table, INCHES).map(({ check }) => check);
    expect(checks).toEqual(['beyond-standard', 'drop-against-standard']);
  });

  it('compares a step that straddles sizes with the curve, and names the table step in its middle', () => {
    // 27 1/2 to 29 in lies 1/2 in below and 1 in above size 10; 28 1/4 in is between 10 and 12.
    const chart = sampleChart('in', ['S', 'M'], { waist_girth: [27.5, 29], hip_girth: [38, 39.5] });
    const [step] = compareSteps(chart, table);
    expect([step?.table?.from, step?.table?.to]).toEqual(['10', '12']);
    expect(step?.table?.difference).toBeCloseTo(0, 9);
  });

  it('says once for each end what lies beyond the table, and compares nothing there', () => {
    // ASTM D5585-95 covers waists of 24 to 36 1/2 in.
    const chart = sampleChart('in', ['A', 'B', 'C', 'D', 'E', 'F', 'G'], {
      waist_girth: [20, 22, 24, 26, 36, 38, 40],
      hip_girth: [30, 32, 34, 36, 46, 48, 50],
    });
    expect(compareSteps(chart, table).map(({ table: given }) => given !== undefined)).toEqual([
      false,
      false,
      true,
      true,
      false,
      false,
    ]);
    const findings = checkAgainstStandard(chart, table, INCHES);
    const beyond = findings.filter(({ check }) => check === 'beyond-standard');
    expect(beyond.map(({ size, severity }) => [size, severity])).toEqual([
      ['A-C', 'note'],
      ['E-G', 'note'],
    ]);
    expect(beyond[0]?.message).toContain('range of 24 in to 36 1/2 in');
    const drops = findings.filter(({ check }) => check === 'drop-against-standard');
    expect(drops.map(({ size }) => size)).toEqual(['C', 'E']);
    expect(drops[0]?.message).toBe(
      'at C the drop (hip minus waist) is 10 in; the table gives 10 1/2 in at that waist ' +
        '(difference -1/2 in), within half a hip step of the chart, 3 in',
    );
    // The sizes that the table covers have hips of 34, 36 and 46 in: half of the mean step of 6 in is 3 in.
    expect(drops.map(({ severity }) => severity)).toEqual(['ok', 'ok']);
  });

  it('says one thing only of a chart that lies wholly beyond the table', () => {
    const chart = sampleChart('cm', ['A', 'B', 'C'], {
      waist_girth: [110, 116, 122],
      hip_girth: [120, 126, 132],
    });
    const findings = checkAgainstStandard(chart, table, INCHES);
    expect(findings.map(({ check, size }) => [check, size])).toEqual([['beyond-standard', 'A-C']]);
  });

  it('says nothing where waist or hip is missing', () => {
    const blank = { waist_girth: [70, null, 78], hip_girth: [90, 94, 98] };
    expect(checkAgainstStandard(sampleChart('cm', ['A', 'B', 'C'], blank), table, INCHES)).toEqual(
      [],
    );
    expect(checkAgainstStandard(sampleChart('cm', [], {}), table, INCHES)).toEqual([]);
  });
});

describe('the range', () => {
  const table = publishedTable('astm-d5585-95');
  const inches = (mm: number | undefined) => (mm ?? NaN) / 25.4;
  const range = (chart: SizeChart) =>
    checkAgainstStandard(chart, table, INCHES).find(({ check }) => check.startsWith('range'));

  it('is totaled over what the table covers: the pre-1958 table against ASTM D5585-95', () => {
    // 24 to 36 in of waist: hip 31 to 45 in, a growth of 14. In ASTM D5585-95 24 in has 34 1/2 in,
    // and 36 in lies 3/4 of the way from 34 1/2 (45 in) to 36 1/2 (47 in): 46 1/2 in, a growth of 12.
    // The eight sizes 10 to 42 have seven steps; half of their mean is 1 in.
    const chart = chartOf(publishedTable('home-pre-1958'));
    const total = compareRange(chart, table);
    expect([total?.from.size, total?.to.size]).toEqual(['10', '42']);
    const figures = [
      total?.waist,
      total?.hip,
      total?.hipGrowth,
      total?.difference,
      total?.tolerance,
    ];
    expect(figures.map(inches).map((value) => Math.round(value * 1e6) / 1e6)).toEqual([
      12, 14, 12, 2, 1,
    ]);
    expect(range(chart)).toMatchObject({ severity: 'warning', size: '10-42' });
    // Its drops of 7 and 9 in are 3 1/2 and 1 1/2 in less than the table's.
    const drops = checkAgainstStandard(chart, table, INCHES).filter(({ check }) =>
      check.startsWith('drop'),
    );
    expect(drops.map(({ severity }) => severity)).toEqual(['note', 'note']);
    expect(range(chart)?.message).toContain(
      'a difference of 2 in; half a hip step of the chart is 1 in, so some sizes would change their label',
    );
  });

  it('warns of a pattern of steps whose sum is right', () => {
    // The hip is 1 1/8 in ahead of the table in the middle and even with it at both ends: the mean
    // step is 1 in, so a hip in the middle belongs to the size after.
    const waist = [24, 25, 26, 27, 28];
    const ahead = sampleChart('in', ['A', 'B', 'C', 'D', 'E'], {
      waist_girth: waist,
      hip_girth: [34.5, 35.5, 37.625, 37.75, 38.5],
    });
    const total = compareRange(ahead, table);
    expect(inches(total?.difference)).toBeCloseTo(0, 9);
    expect(inches(Math.abs(total?.swing.difference ?? NaN))).toBeCloseTo(1.125, 9);
    expect(range(ahead)?.severity).toBe('warning');
    expect(range(ahead)?.message).toContain('and most from');
    const little = sampleChart('in', ['A', 'B', 'C', 'D', 'E'], {
      waist_girth: waist,
      hip_girth: [34.5, 35.5, 37, 37.5, 38.5],
    });
    expect(range(little)?.severity).toBe('ok');
  });

  it('never warns by a survey or by figures from memory', () => {
    const flat = { waist_girth: [64, 68, 72, 76], hip_girth: [90, 91, 92, 93] };
    const chart = sampleChart('cm', ['A', 'B', 'C', 'D'], flat);
    for (const id of ['ansur-1988', 'en-13402-3'])
      expect(
        checkAgainstStandard(chart, publishedTable(id), INCHES).map(({ severity }) => severity),
      ).not.toContain('warning');
    expect(range(chart)?.severity).toBe('warning');
  });
});

describe('properties', () => {
  const tables = USABLE.map(publishedTable);

  it('finds no difference in a chart sampled from the table’s own curve', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...tables),
        fc.uniqueArray(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 2, maxLength: 12 }),
        (table, shares) => {
          const range = waistRange(table);
          if (range === undefined) throw new Error('a usable table has a range');
          const waists = shares
            .toSorted((a, b) => a - b)
            .map((share) => range.least + share * (range.greatest - range.least));
          const chart = sampleChart('mm', waists.map(String), {
            waist_girth: waists,
            hip_girth: waists.map((waist) => hipAtWaist(table, waist) ?? null),
          });
          for (const { table: given } of compareSteps(chart, table))
            expect(given?.difference).toBeCloseTo(0, 9);
        },
      ),
    );
  });

  it('finds the same in every unit', () => {
    const eighth = fc.integer({ min: 0, max: 24 });
    fc.assert(
      fc.property(
        fc.constantFrom(...tables),
        fc.array(fc.tuple(eighth, eighth), { minLength: 1, maxLength: 12 }),
        fc.constantFrom<LengthUnit>('cm', 'mm'),
        (table, steps, unit) => {
          const waists = steps.reduce(
            (all, [step]) => [...all, (all.at(-1) ?? 0) + step / 8],
            [23],
          );
          const hips = steps.reduce(
            (all, [, step]) => [...all, (all.at(-1) ?? 0) + step / 8],
            [33],
          );
          const inUnit = (values: number[]) =>
            values.map((value) => fromMillimeters(value * 25.4, unit));
          const sizes = waists.map((_, index) => `${index}`);
          const inches = sampleChart('in', sizes, { waist_girth: waists, hip_girth: hips });
          const other = sampleChart(unit, sizes, {
            waist_girth: inUnit(waists),
            hip_girth: inUnit(hips),
          });
          const told = (chart: typeof inches) =>
            checkAgainstStandard(chart, table, INCHES).map(({ severity, message }) => [
              severity,
              // What is shown as a decimal is rounded, and may lie between two of its thousandths.
              message.replace(/\.\d+/gu, ''),
            ]);
          expect(told(other)).toEqual(told(inches));
        },
      ),
    );
  });
});
