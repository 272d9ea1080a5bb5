import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { resultFiles, stepsOf } from '../../src/index';
import type { GradeResult } from '../../src/index';
import type { SixteenthsChart } from '../skirts';
import {
  INCH_PENCIL,
  allPoints,
  anyChart,
  chartText,
  farthest,
  pieceOf,
  quarterByHand,
  sixteenthsText,
} from '../skirts';
import type { DraftedResult } from '../graded';
import { runs } from '../samples';
import { gradeLazily } from '../graded';

/** A chart and one of its sizes. */
const chartAndBase = anyChart.chain((chart) =>
  fc.tuple(
    fc.constant(chart),
    fc.nat(chart.waist.length - 1).map((i) => `${i + 1}`),
  ),
);

/** Rounding steps as typed, and in millimeters. */
const STEPS = [
  ['1/8in', 3.175],
  ['1/16in', 1.5875],
  ['1/4in', 6.35],
  ['0.1 in', 2.54],
  ['0.5mm', 0.5],
  ['0,3 cm', 3],
] as const;

function grade(chart: SixteenthsChart, base: string, more = {}): DraftedResult {
  return gradeLazily({ style: 'pencil', chart: sixteenthsText(chart), base, ...more });
}

function everyMove(result: GradeResult, moves = result.range.rules.moves): readonly number[] {
  return moves.flatMap((pieces) =>
    pieces.flatMap((points) => points.flatMap(({ x, y }) => [x, y])),
  );
}

describe('grading any chart', () => {
  it('leaves the base as it was drafted', () => {
    fc.assert(
      fc.property(chartAndBase, ([chart, base]) => {
        const { range } = grade(chart, base);
        const i = Number(base) - 1;
        expect(range.sizes[i]?.label).toBe(base);
        expect(range.sizes[i]?.pieces).toEqual(range.draft.sizes[i]?.pieces);
        expect(range.rules.base).toBe(i);
        expect(range.rules.moves[i]?.flat().every(({ x, y }) => x === 0 && y === 0)).toBe(true);
      }),
      { numRuns: runs(5, 100) },
    );
  });

  it('gives from base plus rules what each size is by its own column, within 0.01 mm', () => {
    fc.assert(
      fc.property(chartAndBase, ([chart, base]) => {
        const result = grade(chart, base);
        let worst = 0;
        chart.waist.forEach((waist, i) => {
          const inches = {
            waist: waist / 16,
            hip: (chart.hip[i] ?? NaN) / 16,
            hipDepth: (chart.hipDepth[i] ?? NaN) / 16,
            length: (chart.length[i] ?? NaN) / 16,
          };
          for (const panel of ['front', 'back'] as const) {
            const expected = quarterByHand(panel, inches);
            const { plan, points } = pieceOf(result, `${i + 1}`, panel);
            plan.pointNames.forEach((name, k) => {
              const [x, y] = expected[name] ?? [NaN, NaN];
              const got = points[k] ?? { x: NaN, y: NaN };
              const gap = Math.hypot(got.x - x * 25.4, got.y - y * 25.4);
              if (!(gap <= worst)) worst = gap;
            });
          }
        });
        expect(worst).toBeLessThan(0.01);
        const checks = result.findings.filter(({ check }) => check === 'graded-equals-draft');
        expect(checks.map(({ severity }) => severity)).toEqual(chart.waist.map(() => 'ok'));
      }),
      { numRuns: runs(30, 1000) },
    );
  });

  it('has rules in exact sixty-fourths and ninety-sixths for charts in sixteenths', () => {
    // Quarters of sixteenths are sixty-fourths, halved for darts; handles are thirds.
    fc.assert(
      fc.property(chartAndBase, ([chart, base]) => {
        const result = grade(chart, base);
        // A line at a depth that is the same in every size ends where a slanting side happens to be.
        const isEnd = (name: string | undefined): boolean =>
          /^(length|hip_depth)_/u.test(name ?? '');
        const moves = result.range.rules.moves.map((pieces) =>
          pieces.map((points, p) =>
            points.filter((_, k) => !isEnd(result.range.plans[p]?.pointNames[k])),
          ),
        );
        for (const move of everyMove(result, moves)) {
          const parts = (move / 25.4) * 128 * 3;
          expect(Math.abs(parts - Math.round(parts))).toBeLessThan(1e-9);
        }
      }),
      { numRuns: runs(3, 50) },
    );
  });

  it('has steps that add up to the moves, outward from the base', () => {
    fc.assert(
      fc.property(chartAndBase, fc.constantFrom(undefined, '1/8in'), ([chart, base], round) => {
        const { range } = grade(chart, base, round === undefined ? {} : { round });
        const steps = stepsOf(range.rules);
        const start = Number(base) - 1;
        for (const direction of [1, -1]) {
          const sums = range.plans.map(({ pointNames }) => pointNames.map(() => ({ x: 0, y: 0 })));
          for (let size = start; size >= 0 && size < steps.length; size += direction) {
            sums.forEach((points, p) => {
              points.forEach((sum, k) => {
                const step = steps[size]?.[p]?.[k];
                sum.x += step?.x ?? NaN;
                sum.y += step?.y ?? NaN;
                const move = range.rules.moves[size]?.[p]?.[k];
                expect(Math.abs(sum.x - (move?.x ?? NaN))).toBeLessThan(1e-9);
                expect(Math.abs(sum.y - (move?.y ?? NaN))).toBeLessThan(1e-9);
              });
            });
          }
        }
      }),
      { numRuns: runs(3, 50) },
    );
  });
});

describe('rounding', () => {
  it('gives whole steps, and less than one off at any size', () => {
    fc.assert(
      fc.property(chartAndBase, fc.constantFrom(...STEPS), ([chart, base], [round, step]) => {
        const { range } = grade(chart, base, { round });
        range.rules.moves.forEach((pieces, size) => {
          pieces.forEach((points, p) => {
            const plan = range.plans[p];
            points.forEach((move, k) => {
              const exact = range.exactRules.moves[size]?.[p]?.[k];
              for (const axis of ['x', 'y'] as const) {
                expect(Math.abs(move[axis] - (exact?.[axis] ?? NaN))).toBeLessThan(step);
                // Handles go with their ends, and no ruler reads them off.
                if (plan?.handles.has(plan.pointNames[k] ?? '')) continue;
                const count = move[axis] / step;
                expect(Math.abs(count - Math.round(count))).toBeLessThan(1e-9);
              }
            });
          });
        });
      }),
      { numRuns: runs(5, 100) },
    );
  });

  it('keeps the intake of a dart that is the same in all sizes', () => {
    fc.assert(
      fc.property(chartAndBase, fc.constantFrom(...STEPS), ([chart, base], [round]) => {
        for (const { measures } of grade(chart, base, { round }).range.sizes)
          for (const { name, value } of measures)
            if (name.endsWith('_intake')) expect(value / 25.4).toBeCloseTo(1, 9);
      }),
      { numRuns: runs(3, 50) },
    );
  });

  it('shares a half step between front and back, so that the girth holds', () => {
    // A quarter of 1/2 in is 1/8 in, half of the step: one panel takes a whole step, the other none.
    const chart = chartText('in', { waist_girth: [25.5, 26, 26.5], hip_girth: [36, 36.5, 37] });
    const { range } = gradeLazily({ style: 'pencil', chart, base: '2', round: '1/4 in' });
    for (const point of ['side_waist', 'side_hip']) {
      const at = range.plans[0]?.pointNames.indexOf(point) ?? -1;
      const moves = range.rules.moves.map((pieces) =>
        [0, 1].map((p) => (pieces[p]?.[at]?.x ?? NaN) / 25.4).toSorted((a, b) => a - b),
      );
      expect(moves).toEqual([
        [-0.25, 0],
        [0, 0],
        [0, 0.25],
      ]);
    }
  });
});

describe('the stack point', () => {
  const POINTS = ['center_waist', 'side_hip', 'side_waist', 'dart_tip', 'center_hem', 'center_hip'];

  it('is the zero of every size', () => {
    fc.assert(
      fc.property(chartAndBase, fc.constantFrom(...POINTS), ([chart, base], stack) => {
        const result = grade(chart, base, { stack });
        for (const [key, { x, y }] of allPoints(result))
          if (key.endsWith(` ${stack}`)) expect([Math.abs(x), Math.abs(y)]).toEqual([0, 0]);
      }),
      { numRuns: runs(3, 50) },
    );
  });

  it('moves the pieces and leaves their shapes', () => {
    fc.assert(
      fc.property(chartAndBase, fc.constantFrom(...POINTS), ([chart, base], stack) => {
        const [plain, stacked] = [grade(chart, base), grade(chart, base, { stack })];
        const [here, there] = [allPoints(plain), allPoints(stacked)];
        for (const [key, from] of here) {
          const zero = here.get(key.replace(/\w+$/, stack));
          const to = there.get(key);
          expect(Math.abs(from.x - (zero?.x ?? NaN) - (to?.x ?? NaN))).toBeLessThan(1e-9);
          expect(Math.abs(from.y - (zero?.y ?? NaN) - (to?.y ?? NaN))).toBeLessThan(1e-9);
        }
        stacked.range.sizes.forEach(({ measures }, i) => {
          measures.forEach(({ value }, k) => {
            const other = plain.range.sizes[i]?.measures[k]?.value ?? NaN;
            expect(Math.abs(value - other)).toBeLessThan(1e-6);
          });
        });
      }),
      { numRuns: runs(3) },
    );
  });
});

describe('what must not matter', () => {
  it('inches or the centimeters that are as long', () => {
    fc.assert(
      fc.property(chartAndBase, ([chart, base]) => {
        const inches = gradeLazily({ style: 'pencil', chart: sixteenthsText(chart, 'in'), base });
        // The lengths that a style brings along follow the unit of the chart.
        const cm = gradeLazily({
          style: 'pencil',
          chart: sixteenthsText(chart, 'cm'),
          base,
          set: {
            ...Object.fromEntries(
              Object.entries(INCH_PENCIL).filter(
                ([name]) => !['skirt_length', 'waist_to_hip'].includes(name),
              ),
            ),
            hem_allowance: '2 in',
          },
        });
        expect(farthest(inches, cm)).toBeLessThan(1e-6);
        expect(cm.display.unit).toBe('cm');
      }),
      { numRuns: runs(5, 100) },
    );
  });

  it('the order of the sizes, from small to large or the other way', () => {
    fc.assert(
      fc.property(chartAndBase, ([chart, base]) => {
        const sizes = chart.waist.map((_, i) => `${i + 1}`);
        const rows = {
          waist_girth: chart.waist.map((n) => n / 16),
          hip_girth: chart.hip.map((n) => n / 16),
          skirt_length: chart.length.map((n) => n / 16),
        };
        const backward = Object.fromEntries(
          Object.entries(rows).map(([name, row]) => [name, row.toReversed()]),
        );
        const [up, down] = [
          gradeLazily({ style: 'pencil', chart: chartText('in', rows, sizes), base }),
          gradeLazily({
            style: 'pencil',
            chart: chartText('in', backward, sizes.toReversed()),
            base,
          }),
        ];
        expect(down.range.sizes.map(({ label }) => label)).toEqual(sizes);
        expect(farthest(up, down)).toBe(0);
        const texts = (result: GradeResult) =>
          resultFiles(result).map(({ name, text }) =>
            // One note says that the chart was turned round.
            name === 'findings.csv'
              ? [name, text.split('\n').filter((line) => !line.includes('large'))]
              : [name, text],
          );
        expect(texts(down)).toEqual(texts(up));
      }),
      { numRuns: runs(3) },
    );
  });

  it('which size is the base, as far as the graded sizes go', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        const last = `${chart.waist.length}`;
        expect(farthest(grade(chart, '1'), grade(chart, last))).toBeLessThan(1e-9);
      }),
      { numRuns: runs(3, 50) },
    );
  });
});
