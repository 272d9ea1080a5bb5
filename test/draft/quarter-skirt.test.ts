import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureOf, outlineSegments } from '../../src/index';
import type { GradeRequest, GradeResult, Piece } from '../../src/index';
import type { Cubic } from '../../src/geometry/segment';
import { casteljau } from '../geometry/curves';
import { anyChart, chartText, inches, pieceOf, quarterByHand, sixteenthsText } from '../skirts';
import { runs } from '../samples';
import { gradeLazily } from '../graded';

const CHECK_CHART = chartText('in', { waist_girth: [24, 26], hip_girth: [36, 38] });

function drafted(request: Partial<GradeRequest> = {}): GradeResult {
  return gradeLazily({ style: 'pencil', chart: CHECK_CHART, base: '1', ...request });
}

function sideCurve(piece: Piece): Cubic {
  const curve = outlineSegments(piece).find((segment) => segment.kind === 'cubic');
  if (curve === undefined) throw new RangeError('no curve');
  return curve;
}

// The quarter method: common practice, no source; worked out by hand in inches.
describe('the check values of the pencil skirt', () => {
  it('a waist of 24 in gives a waist edge of 7 in', () => {
    const skirt = drafted();
    for (const piece of ['front', 'back'])
      expect(inches(skirt, '1', piece, 'side_waist')).toEqual([7, 0]);
  });

  it.each([
    ['center_waist', 0, 0],
    ['dart_center', 3.5, 0],
    ['dart_inner', 3, 0],
    ['dart_outer', 4, 0],
    ['dart_tip', 3.5, 4],
    ['side_waist', 7, 0],
    ['center_hip', 0, 8],
    ['side_hip', 9.5, 8],
    ['center_hem', 0, 27],
    ['side_hem', 8.5, 27],
  ])('front %s is at %d, %d', (point, x, y) => {
    const [gotX, gotY] = inches(drafted(), '1', 'front', point);
    expect(gotX).toBeCloseTo(x, 12);
    expect(gotY).toBeCloseTo(y, 12);
  });

  it('the back differs by its dart alone', () => {
    const skirt = drafted();
    const { pointNames } = pieceOf(skirt, '1', 'front').plan;
    for (const point of pointNames)
      if (point !== 'dart_tip')
        expect(inches(skirt, '1', 'back', point)).toEqual(inches(skirt, '1', 'front', point));
    expect(inches(skirt, '1', 'back', 'dart_tip')[1]).toBeCloseTo(5, 12);
  });

  it('waist and hip come out as body plus ease', () => {
    const [size] = drafted().range.sizes;
    if (size === undefined) return;
    expect(measureOf(size, 'waist') / 25.4).toBeCloseTo(24, 9);
    expect(measureOf(size, 'hip') / 25.4).toBeCloseTo(38, 9);
    expect(measureOf(size, 'hem') / 25.4).toBeCloseTo(34, 9);
  });
});

describe('the pencil skirt of any body', () => {
  it('has every point where the table of the quarter method puts it', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        const skirt = gradeLazily({ style: 'pencil', chart: sixteenthsText(chart), base: '1' });
        chart.waist.forEach((_, i) => {
          const value = (row: readonly number[]) => (row[i] ?? NaN) / 16;
          const body = {
            waist: value(chart.waist),
            hip: value(chart.hip),
            hipDepth: value(chart.hipDepth),
            length: value(chart.length),
          };
          for (const panel of ['front', 'back'] as const) {
            const expected = quarterByHand(panel, body);
            const { pointNames } = pieceOf(skirt, `${i + 1}`, panel).plan;
            // Where to lengthen or shorten is of the whole range, and has tests of its own.
            const own = pointNames.filter((name) => !/^(length|hip_depth)_/u.test(name));
            expect(own.toSorted()).toEqual(Object.keys(expected).sort());
            for (const [point, [x, y]] of Object.entries(expected)) {
              const [gotX, gotY] = inches(skirt, `${i + 1}`, panel, point);
              expect(Math.abs(gotX - x)).toBeLessThan(1e-10);
              expect(Math.abs(gotY - y)).toBeLessThan(1e-10);
            }
          }
        });
      }),
      { numRuns: runs(10) },
    );
  });

  // The bulge of a side seam is at most a quarter of its take-up, or it swings outside the hip
  // (arithmetic of the curve).
  it('has a side that is upright at the hip, convex, and bulges by a quarter of the take-up', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        const skirt = gradeLazily({ style: 'pencil', chart: sixteenthsText(chart), base: '1' });
        for (const { pieces } of skirt.range.sizes) {
          for (const piece of pieces) {
            const curve = sideCurve(piece);
            const takeUp = curve.to.x - curve.from.x;
            const points = Array.from({ length: 257 }, (_, k) => casteljau(curve, k / 256));
            const beyondChord = points.map(
              ({ x, y }) => x - (curve.from.x + (takeUp * y) / curve.to.y),
            );
            expect(Math.max(...beyondChord.map((bulge) => Math.sign(takeUp) * bulge))).toBeCloseTo(
              Math.abs(takeUp) / 4,
              9,
            );
            expect(curve.arrive.x).toBeCloseTo(curve.to.x, 10);
            for (const { x, y } of points) {
              expect(x).toBeLessThanOrEqual(Math.max(curve.to.x, curve.from.x) + 1e-9);
              expect(y).toBeGreaterThanOrEqual(-1e-9);
            }
            // Convex: the slope along the side never turns back.
            const slopes = points
              .slice(1)
              .map((p, k) => (p.x - (points[k]?.x ?? 0)) / (p.y - (points[k]?.y ?? 0)));
            slopes.slice(1).forEach((slope, k) => {
              expect(Math.sign(takeUp) * (slope - (slopes[k] ?? 0))).toBeLessThan(1e-9);
            });
          }
        }
      }),
      { numRuns: runs(5) },
    );
  });
});

describe('the zip allowance', () => {
  it('stands outside the center back and moves neither dart nor measure', () => {
    const [narrow, wide] = ['0 in', '2 in'].map((zip_allowance) =>
      drafted({ set: { zip_allowance } }),
    );
    if (narrow === undefined || wide === undefined) return;
    expect(inches(wide, '1', 'back', 'zip_waist')).toEqual([-2, 0]);
    expect(inches(wide, '1', 'back', 'zip_hem')).toEqual([-2, 27]);
    for (const point of ['dart_inner', 'dart_tip', 'dart_outer', 'side_waist', 'center_waist'])
      expect(inches(wide, '1', 'back', point)).toEqual(inches(narrow, '1', 'back', point));
    expect(wide.range.sizes.map(({ measures }) => measures)).toEqual(
      narrow.range.sizes.map(({ measures }) => measures),
    );
  });

  it('is the same in every size', () => {
    const skirt = drafted();
    for (const size of ['1', '2'])
      expect(inches(skirt, size, 'back', 'zip_waist')).toEqual([-1, 0]);
  });
});

describe('the straight skirt', () => {
  it('is the pencil skirt with its hem as wide as its hip', () => {
    const [pencil, straight] = ['pencil', 'straight'].map((style) => drafted({ style }));
    if (pencil === undefined || straight === undefined) return;
    for (const piece of ['front', 'back']) {
      for (const point of pieceOf(straight, '1', piece).plan.pointNames) {
        const [x, y] = inches(straight, '1', piece, point);
        const [pencilX, pencilY] = inches(pencil, '1', piece, point);
        expect(x).toBeCloseTo(['side_hem', 'length_side'].includes(point) ? 9.5 : pencilX, 12);
        expect(y).toBe(pencilY);
      }
    }
  });

  it('does not turn at the hip, which the pencil does by its taper over its length', () => {
    const corner = (style: string) =>
      drafted({ style }).findings.filter(({ check }) => check === 'side-direction');
    expect(corner('straight').map(({ severity }) => severity)).toEqual(['ok', 'ok']);
    const found = corner('pencil');
    expect(found.map(({ piece }) => piece)).toEqual(['front', 'back']);
    expect(found.map(({ severity }) => severity)).toEqual(['note', 'note']);
    expect(found.map(({ subject }) => subject)).toEqual(['side_hip', 'side_hip']);
    // 1 in over the 19 in from hip to hem.
    for (const { measured } of found)
      expect(measured).toBeCloseTo((Math.atan(1 / 19) * 180) / Math.PI, 9);
  });
});
