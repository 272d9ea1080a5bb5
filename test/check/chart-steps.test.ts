import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SizeChart } from '../../src/chart/size-chart';
import { checkChartSteps } from '../../src/check/chart-steps';
import { publishedTable } from '../../src/standards/published-tables';
import type { LengthUnit } from '../../src/units';
import { chartOf, chartOfSteps, sampleChart } from '../standards/sample-chart';

const INCHES = { unit: 'in', fractions: true } as const;

/** The findings of one check, as severity, subject and size. */
function told(chart: SizeChart, check: string): string[] {
  return checkChartSteps(chart, INCHES)
    .filter((finding) => finding.check === check)
    .map(({ severity, subject, size }) => `${severity} ${subject} ${size}`.trim());
}

describe('steps that go up and down', () => {
  it('are caught in a pattern of 1/4, 1/8, 3/8', () => {
    // Raw chart data jump and should be smoothed; common practice, no source.
    const chart = chartOfSteps('in', [26, 36], [0.25, 0.125, 0.375], [0.25, 0.25, 0.25]);
    expect(told(chart, 'uneven-steps')).toEqual(['warning waist_girth 2-3']);
    expect(told(chart, 'grade-break')).toEqual([]);
    const [message] = checkChartSteps(chart, INCHES)
      .filter(({ check }) => check === 'uneven-steps')
      .map((finding) => finding.message);
    expect(message).toBe(
      'the waist goes up and down: steps of 1/4 in (1 to 2), then 1/8 in (2 to 3), ' +
        'then 3/8 in (3 to 4)',
    );
  });

  it('are caught in the same chart in cm', () => {
    const cm = (inches: number[]) => inches.map((value) => value * 2.54);
    const steps = cm([0.25, 0.125, 0.375]);
    const chart = chartOfSteps('cm', [26 * 2.54, 36 * 2.54], steps, cm([0.25, 0.25, 0.25]));
    expect(told(chart, 'uneven-steps')).toEqual(['warning waist_girth 2-3']);
  });

  it('are every single step that is larger or smaller than both its neighbors', () => {
    const chart = chartOfSteps('cm', [60, 90], [4, 5, 4, 4, 3, 4], [4, 4, 4, 4, 4, 4]);
    expect(told(chart, 'uneven-steps')).toEqual([
      'warning waist_girth 2-3',
      // The two steps of 4 between a 5 and a 3 only pass from one to the other.
      'warning waist_girth 5-6',
    ]);
  });

  it('are only a note where several equal steps turn, as in the hip of ASTM D5585-11e1', () => {
    // Hip steps 5/8, 1 1/4 twice, 1 1/8, 1 twice, 1 1/2 ... in (second-hand copy).
    const chart = chartOf(publishedTable('astm-d5585-11e1-curvy'));
    expect(told(chart, 'uneven-steps')).toEqual(['note hip_girth 0-4', 'note hip_girth 6-10']);
  });

  it('are not seen in a step that jumps up and stays up, nor in a difference below 1/16 in', () => {
    expect(told(chartOfSteps('in', [24, 34], [1, 1, 2, 2], [1, 1, 1, 2]), 'uneven-steps')).toEqual(
      [],
    );
    const rounded = [2.13, 2.12, 2.13, 2.12];
    expect(checkChartSteps(chartOfSteps('in', [40, 45], rounded, rounded), INCHES)).toEqual([]);
  });
});

describe('breaks', () => {
  it('lie at different sizes in the 1968 home-pattern table', () => {
    // US pattern-industry misses sizing of 1968: waist 1 1 1 1/2 1 1/2 2 2 2, hip 1 1 1 1/2 2 2 2 2.
    const chart = chartOf(publishedTable('home-misses-1968'));
    expect(told(chart, 'grade-break')).toEqual([
      'note waist_girth 10',
      'note waist_girth 14',
      'note hip_girth 10',
      'note hip_girth 12',
    ]);
    const messages = checkChartSteps(chart, INCHES).map(({ message }) => message);
    expect(messages).toContain('the waist breaks at 14: its step grows from 1 1/2 in to 2 in');
    expect(messages).toContain(
      'the waist breaks at 10, 14 and the hip breaks at 10, 12, so the drop changes between',
    );
    expect(messages).toContain(
      'the drop (hip minus waist) is 9 1/2 in at 6 and 10 in at 20; it changes at 14',
    );
    expect(checkChartSteps(chart, INCHES)).toHaveLength(6);
  });

  it('lie together in ASTM D5585-95, whose drop holds', () => {
    // ASTM D5585-95: 1, 1 1/2, 2 in for waist and hip alike, breaking at 10 and 16.
    const chart = chartOf(publishedTable('astm-d5585-95'));
    expect(told(chart, 'grade-break')).toEqual([
      'note waist_girth 10',
      'note waist_girth 16',
      'note hip_girth 10',
      'note hip_girth 16',
    ]);
    expect(told(chart, 'breaks-differ')).toEqual([]);
    expect(told(chart, 'drop-changes')).toEqual([]);
  });

  it('are told where a step falls for good', () => {
    const chart = chartOfSteps('cm', [60, 90], [6, 6, 4, 4], [6, 6, 6, 6]);
    expect(told(chart, 'grade-break')).toEqual(['note waist_girth 3']);
    expect(checkChartSteps(chart, INCHES)[0]?.message).toContain('its step falls from');
  });
});

it('takes steps that differ by exactly 1/16 in for two grades, in every unit', () => {
  const perInch: Record<LengthUnit, number> = { in: 1, cm: 2.54, mm: 25.4 };
  for (const unit of ['in', 'cm', 'mm'] as const) {
    for (let start = 24; start < 34; start += 1 / 8) {
      const scaled = (values: number[]) => values.map((value) => value * perInch[unit]);
      const steps = scaled([1, 1, 17 / 16, 17 / 16]);
      const girths = [start * perInch[unit], (start + 10) * perInch[unit]] as const;
      expect(told(chartOfSteps(unit, girths, steps, steps), 'grade-break')).toEqual([
        'note waist_girth 3',
        'note hip_girth 3',
      ]);
    }
  }
});

describe('the drop', () => {
  const message = (chart: SizeChart) =>
    checkChartSteps(chart, INCHES).find(({ check }) => check === 'drop-changes')?.message;

  it('shrinks from 5 in to 3 5/8 in over ASTM D6960-16', () => {
    // ASTM D6960/D6960M-16, second-hand; 14W to 18W hold, every size above is less.
    expect(message(chartOf(publishedTable('astm-d6960-16')))).toMatch(
      /is 5 in at 14W and 3 5\/8 in at 40W; it changes at 20W, 22W, .*, 40W$/,
    );
  });

  it('is said to change at every size where it does', () => {
    expect(message(chartOfSteps('cm', [60, 90], [4, 4, 4], [3, 3, 3]))).toMatch(/every size$/);
  });

  it('is seen to drift by less than a step a size', () => {
    const chart = chartOfSteps('mm', [600, 900], [40, 40, 40], [41, 41, 41]);
    expect(message(chart)).toMatch(/changes at 3$/);
  });
});

describe('girths that no body has', () => {
  it('are a girth that stays while the other grows', () => {
    expect(told(chartOfSteps('cm', [60, 90], [4, 0, 4], [4, 4, 4]), 'girth-not-growing')).toEqual([
      'warning waist_girth 2-3',
    ]);
    // Two lengths of one girth, such as petite and tall, are no defect.
    expect(told(chartOfSteps('cm', [60, 90], [4, 0, 4], [4, 0, 4]), 'girth-not-growing')).toEqual(
      [],
    );
  });

  it('are a girth that falls in a step, which fails', () => {
    const chart = chartOfSteps('cm', [60, 90], [4, 4, 4], [4, -2, 4]);
    expect(told(chart, 'larger-is-smaller')).toEqual(['fail hip_girth 2-3']);
    expect(told(chart, 'girth-not-growing')).toEqual([]);
    // 1 mm is what cells rounded to 1 mm leave of nothing.
    const rounded = chartOfSteps('mm', [600, 900], [40, 40], [40, -1]);
    expect(told(rounded, 'larger-is-smaller')).toEqual([]);
  });

  it('are a hip below the waist, at the size that has it', () => {
    const chart = sampleChart('cm', ['A', 'B'], { waist_girth: [90, 100], hip_girth: [91, 98] });
    expect(told(chart, 'hip-below-waist')).toEqual(['warning hip_girth B']);
    const equal = sampleChart('cm', ['A', 'B'], { waist_girth: [90, 100], hip_girth: [90, 100] });
    expect(told(equal, 'hip-below-waist')).toEqual([]);
  });

  it('are those outside the range of adults, as when inches are taken for cm', () => {
    const chart = sampleChart('cm', ['8', '10', '12'], {
      waist_girth: [27, 28, 45],
      hip_girth: [37, 56, 190.5],
    });
    expect(told(chart, 'measurement-range')).toEqual(['warning waist_girth', 'warning hip_girth']);
    const [waist] = checkChartSteps(chart, { unit: 'cm', fractions: false });
    expect(waist?.message).toBe(
      'waist_girth is outside 45 cm to 175 cm at 8, 10 (farthest: 27 cm at 8); ' +
        'is the unit of the chart right?',
    );
  });

  // 32 in is a usual skirt and 32 cm a very short one; 50 the other way round.
  it.each([
    ['cm', 32, 1],
    ['cm', 35, 1],
    ['cm', 38, 0],
    ['cm', 110, 0],
    ['in', 14, 0],
    ['in', 42, 0],
    ['in', 50, 1],
  ] as const)('ask for the unit of a skirt of %s %d: %d', (unit, length, times) => {
    const chart = sampleChart(unit, ['8', '10'], {
      ...(unit === 'cm'
        ? { waist_girth: [64, 68], hip_girth: [90, 94] }
        : { waist_girth: [26, 27], hip_girth: [36, 37] }),
      skirt_length: [length, length],
    });
    expect(told(chart, 'measurement-range')).toEqual(times === 0 ? [] : ['warning skirt_length']);
  });

  it('are judged cell by cell where a cell is blank, and no step is taken across the gap', () => {
    const chart = sampleChart('cm', ['A', 'B', 'C'], {
      waist_girth: [30, null, 78],
      hip_girth: [90, 94, 98],
    });
    expect(checkChartSteps(chart, INCHES).map(({ check, size }) => [check, size])).toEqual([
      ['measurement-range', 'A'],
    ]);
  });
});

it('finds the same in every unit', () => {
  const eighth = fc.integer({ min: -4, max: 24 });
  const perInch: Record<LengthUnit, number> = { in: 1, cm: 2.54, mm: 25.4 };
  fc.assert(
    fc.property(
      fc.array(fc.tuple(eighth, eighth), { minLength: 1, maxLength: 12 }),
      fc.constantFrom<LengthUnit>('cm', 'mm'),
      (steps, unit) => {
        const chartIn = (of: LengthUnit) =>
          chartOfSteps(
            of,
            [24 * perInch[of], 30 * perInch[of]],
            steps.map(([waist]) => (waist / 8) * perInch[of]),
            steps.map(([, hip]) => (hip / 8) * perInch[of]),
          );
        const messages = (chart: SizeChart) =>
          checkChartSteps(chart, INCHES).map(({ severity, message }) => [severity, message]);
        expect(messages(chartIn(unit))).toEqual(messages(chartIn('in')));
      },
    ),
  );
});
