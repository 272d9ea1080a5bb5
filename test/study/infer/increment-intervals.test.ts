/** Bounds of increments behind a rounded sheet, by hand and against sheets that were rounded from known bodies. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { incrementIntervals, rulerOf } from '../../../src/study/infer/increment-intervals';
import { inferIncrements } from '../../../src/study/infer/infer-increments';
import { toMillimeters } from '../../../src/units';
import { runs } from '../../samples';

const INCH = toMillimeters(1, 'in');

describe('bounds of increments', () => {
  it('are those of a hand-worked example', () => {
    // A quarter that says 3/8 and an eighth that says 1/4, in inches on a ruler of eighths: the quarter lies
    // between 5/16 and 7/16, so the whole between 1 1/4 and 1 3/4; the eighth between 3/16 and 5/16: 1 1/2 to 2 1/2.
    const cells = [
      { row: [1 / 4], given: 3 / 8, off: 1 / 16 },
      { row: [1 / 8], given: 1 / 4, off: 1 / 16 },
    ];
    expect(incrementIntervals(cells, 1)).toEqual([[1.5, 1.75]]);
  });

  it('pass from one measurement to another that shares a cell', () => {
    // a in 1..2, a + b in 4..5, so b in 2..4; nothing tells c.
    const cells = [
      { row: [1, 0, 0], given: 1.5, off: 0.5 },
      { row: [1, 1, 0], given: 4.5, off: 0.5 },
    ];
    expect(incrementIntervals(cells, 3)).toEqual([
      [1, 2],
      [2, 4],
      [-Infinity, Infinity],
    ]);
  });

  it('are none where no increment gives all cells', () => {
    const cells = [0, 1].map((given) => ({ row: [1], given, off: 0.25 }));
    expect(incrementIntervals(cells, 1)).toBeUndefined();
  });

  it('take the coarsest ruler with all marks', () => {
    expect(
      rulerOf(
        [3 / 8, 1 / 4].map((inches) => inches * INCH),
        'in',
      ),
    ).toBeCloseTo(INCH / 8, 9);
    expect(
      rulerOf(
        [3 / 8, 3 / 16].map((inches) => inches * INCH),
        'in',
      ),
    ).toBeCloseTo(INCH / 16, 9);
    expect(rulerOf([3, 4.5], 'cm')).toBe(0.5);
    expect(rulerOf([3, 4.37], 'mm')).toBeUndefined();
  });

  it('hold the increments from which a sheet was rounded, as moves and as steps', () => {
    const growth = fc.double({ min: 0.5, max: 4, noNaN: true });
    fc.assert(
      fc.property(growth, growth, fc.boolean(), (waist, hip, asSteps) => {
        const mark = 16;
        const rounded = (inches: number): number => Math.round(inches * mark) / mark;
        // The shares of the quarter method: common practice, no source.
        const points = [
          ['front.side_waist', waist / 4],
          ['front.dart_tip', waist / 8],
          ['front.side_hip', hip / 4],
        ] as const;
        const form = asSteps ? 'step_dx' : 'dx';
        const sheet = [
          '# unit: in',
          '# base: 10',
          '# zero: center_waist',
          `piece,point,size,${form}`,
          ...points.flatMap(([name, share]) => {
            const at = name.replace('.', ',');
            // Steps are rounded one by one, moves once.
            const second = asSteps ? rounded(share) : rounded(2 * share);
            return [`${at},10,0`, `${at},12,${rounded(share)}`, `${at},14,${second}`];
          }),
          '',
        ].join('\n');
        const { measurements, sizes } = inferIncrements({ sheet });
        for (const [label, times] of [
          ['12', 1],
          ['14', 2],
        ] as const) {
          const { within } = sizes.find((size) => size.label === label) ?? {};
          for (const [name, one] of [
            ['waist_girth', waist],
            ['hip_girth', hip],
          ] as const) {
            const [least, most] = within?.[measurements.indexOf(name)] ?? [NaN, NaN];
            expect(least).toBeLessThanOrEqual(times * one * INCH + 1e-6);
            expect(most).toBeGreaterThanOrEqual(times * one * INCH - 1e-6);
            // A quarter of a girth that is off by half a mark: the girth is off by two.
            expect(most - least).toBeLessThanOrEqual(4 * times * (INCH / 8) + 1e-6);
          }
        }
      }),
      { numRuns: runs(60) },
    );
  });
});
