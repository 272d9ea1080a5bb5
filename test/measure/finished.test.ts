import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gradeChart, resultFiles } from '../../src/index';
import type { GradeRequest, LengthUnit } from '../../src/index';
import { finishedMeasures } from '../../src/measure/finished';
import { skirtPoints } from '../../src/measure/skirt-points';
import { pointsOf, rowsOf } from '../csv-tables';
import { chordLength, cubic } from '../geometry/curves';
import { anyChart, chartText, sixteenthsText } from '../skirts';
import { runs } from '../samples';

const MM: Record<LengthUnit, number> = { in: 25.4, cm: 10, mm: 1 };

function tables(request: GradeRequest): (name: string) => string {
  const files = new Map(resultFiles(gradeChart(request)).map(({ name, text }) => [name, text]));
  return (name) => files.get(name) ?? '';
}

/** Every finished measure worked out from the points alone, as one would with ruler and tape. */
function byHand(at: ReturnType<typeof pointsOf>, size: string): Readonly<Record<string, number>> {
  const [front, back] = ['front', 'back'].map((piece) => {
    const p = (point: string) => at(size, piece, point);
    const apart = (a: string, b: string) => Math.hypot(p(a).x - p(b).x, p(a).y - p(b).y);
    const curve = ['side_waist', 'side_waist_handle', 'side_hip_handle', 'side_hip'].flatMap(
      (point) => [p(point).x, p(point).y],
    );
    // 2000 chords of a side seam fall short by less than a ten-thousandth of a millimeter.
    const side = chordLength(cubic(...curve), 2000);
    return {
      waist: apart('center_waist', 'dart_inner') + apart('dart_outer', 'side_waist'),
      hip: p('side_hip').x - p('center_hip').x,
      hem: apart('center_hem', 'side_hem'),
      center: apart('center_waist', 'center_hem'),
      side: side + apart('side_hip', 'side_hem'),
      intake: apart('dart_inner', 'dart_outer'),
      inner: apart('dart_inner', 'dart_tip'),
      outer: apart('dart_outer', 'dart_tip'),
    };
  });
  if (front === undefined || back === undefined) return {};
  return {
    waist: 2 * (front.waist + back.waist),
    hip: 2 * (front.hip + back.hip),
    hem: 2 * (front.hem + back.hem),
    center_front_length: front.center,
    center_back_length: back.center,
    side_seam_front: front.side,
    side_seam_back: back.side,
    front_dart_intake: front.intake,
    front_dart_inner_leg: front.inner,
    front_dart_outer_leg: front.outer,
    back_dart_intake: back.intake,
    back_dart_inner_leg: back.inner,
    back_dart_outer_leg: back.outer,
  };
}

function expectByHand(request: GradeRequest, unit: LengthUnit, sizes: readonly string[]): void {
  const table = tables(request);
  const at = pointsOf(table('graded-points.csv'), unit);
  // Stride and zip are no lengths on a piece; they have tests of their own.
  const rows = rowsOf(table('finished-measurements.csv')).filter(
    ({ measure = '' }) => !/^(?:stride|zip_.*)$/u.test(measure),
  );
  for (const size of sizes) {
    const expected = byHand(at, size);
    expect(rows.map(({ measure }) => measure).sort()).toEqual(Object.keys(expected).sort());
    for (const { measure = '', unit: written, ...columns } of rows) {
      expect(written).toBe(unit);
      // Each coordinate in the table is right to about 0.0005 mm; girths add up sixteen of them.
      const gap = (Number(columns[size]) - (expected[measure] ?? NaN)) * MM[unit];
      expect(Math.abs(gap), `${measure} of ${size}`).toBeLessThan(0.01);
    }
  }
}

describe('finished measurements', () => {
  it('are those of the written points, in every unit', () => {
    const chart = chartText('in', {
      waist_girth: [24, 26.5, 30],
      hip_girth: [35, 38, 41],
      waist_to_hip: [7.75, 8, 8.25],
      skirt_length: [25, 25.5, 26],
    });
    for (const unit of ['in', 'cm', 'mm'] as const)
      expectByHand({ style: 'pencil', chart, base: '2', unit }, unit, ['1', '2', '3']);
  });

  it('are those of the written points for any chart, rounded or not, wherever it is stacked', () => {
    fc.assert(
      fc.property(
        anyChart,
        fc.constantFrom(undefined, '1/16in', '1/4in'),
        fc.constantFrom('center_waist', 'side_hip', 'dart_tip'),
        (chart, round, stack) => {
          expectByHand(
            {
              style: 'pencil',
              chart: sixteenthsText(chart),
              base: '1',
              stack,
              ...(round === undefined ? {} : { round }),
            },
            'in',
            chart.waist.map((_, i) => `${i + 1}`),
          );
        },
      ),
      { numRuns: runs(3) },
    );
  });

  it('are those of the written points where all points of the center move', () => {
    // Rounded one by one, the hip mark of the front came to stand a step off the fold.
    const chart = chartText('in', {
      waist_girth: [22, 22],
      hip_girth: [26, 26.875],
      waist_to_hip: [7, 7],
      skirt_length: [18, 18],
    });
    expectByHand({ style: 'pencil', chart, base: '1', stack: 'side_hip', round: '1/16in' }, 'in', [
      '1',
      '2',
    ]);
  });

  it('are body plus ease where nothing is rounded', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        const { range } = gradeChart({
          style: 'pencil',
          chart: sixteenthsText(chart),
          base: '1',
          set: { waist_ease: '1/2 in', hip_ease: '3 in' },
        });
        range.sizes.forEach(({ measures }, i) => {
          const value = (name: string) => measures.find((m) => m.name === name)?.value ?? NaN;
          expect(value('waist') / 25.4).toBeCloseTo((chart.waist[i] ?? NaN) / 16 + 0.5, 6);
          expect(value('hip') / 25.4).toBeCloseTo((chart.hip[i] ?? NaN) / 16 + 3, 6);
          expect(value('side_seam_front')).toBe(value('side_seam_back'));
        });
      }),
      { numRuns: runs(10) },
    );
  });

  it('are written as fractions where asked and nothing is lost', () => {
    const chart = chartText('in', { waist_girth: [24.5, 26], hip_girth: [36, 38] });
    const [waist] = rowsOf(
      tables({ style: 'pencil', chart, base: '1', fractions: true })('finished-measurements.csv'),
    );
    expect(waist).toEqual({ measure: 'waist', unit: 'in', 1: '24 1/2', 2: '26' });
  });

  it('take each leg of a dart that leans by itself', () => {
    const [size] = gradeChart({
      style: 'pencil',
      chart: chartText('in', { waist_girth: [24, 26], hip_girth: [36, 38] }),
      base: '1',
    }).range.sizes;
    // The tip moved half an inch out: it lies straight below the outer leg's end.
    const leaning = (size?.pieces ?? []).map(({ plan, points }) => ({
      plan,
      points: points.map(({ x, y }, i) =>
        plan.pointNames[i] === 'dart_tip' ? { x: x + 12.7, y } : { x, y },
      ),
    }));
    const measures = new Map(
      finishedMeasures(skirtPoints(leaning.map(({ plan }) => plan)), leaning).map(
        ({ name, value }) => [name, value],
      ),
    );
    for (const [piece, long] of [
      ['front', 4],
      ['back', 5],
    ] as const) {
      const leg = (which: string) => (measures.get(`${piece}_dart_${which}_leg`) ?? NaN) / 25.4;
      expect(leg('inner')).toBeCloseTo(Math.hypot(1, long), 9);
      expect(leg('outer')).toBeCloseTo(long, 9);
    }
  });
});
