import { EVEN_CHART, EVEN_SIZES, MISSES, MISSES_CHART, MISSES_GRADE } from '../published';
import { describe, expect, it } from 'vitest';
import { measureOf, stepsOf } from '../../src/index';
import type { GradeResult } from '../../src/index';
import { chartText, movesOf } from '../skirts';
import { gradeLazily } from '../graded';

/** Cumulative move in inches; the engine's y runs down, so longer is positive. */
function rule(result: GradeResult, size: string, piece: string, point: string): [number, number] {
  const { x, y } = movesOf(result.range.rules.moves, result, size, piece, point);
  return [x / 25.4, y / 25.4];
}

function expectRule(
  result: GradeResult,
  size: string,
  point: string,
  [dx, dy]: readonly [number, number],
): void {
  for (const piece of ['front', 'back']) {
    const [gotX, gotY] = rule(result, size, piece, point);
    expect(gotX, `${piece} ${point} of ${size}, dx`).toBeCloseTo(dx, 10);
    expect(gotY, `${piece} ${point} of ${size}, dy`).toBeCloseTo(dy, 10);
  }
}

function girth(result: GradeResult, label: string, measure: string): number {
  const size = result.range.sizes.find((candidate) => candidate.label === label);
  return size === undefined ? NaN : measureOf(size, measure) / 25.4;
}

const DART = ['dart_inner', 'dart_center', 'dart_tip', 'dart_outer'];

describe('an even grade of one inch', () => {
  const skirt = gradeLazily({ style: 'pencil', chart: EVEN_CHART, base: '10' });

  it.each(EVEN_SIZES.map((size, steps) => [size, steps] as const))(
    'size %s moves %i times the published step',
    (size, steps) => {
      const times = (dx: number, dy: number) => [steps * dx, steps * dy] as const;
      expectRule(skirt, size, 'center_waist', times(0, 0));
      for (const point of DART) expectRule(skirt, size, point, times(1 / 8, 0));
      expectRule(skirt, size, 'side_waist', times(1 / 4, 0));
      expectRule(skirt, size, 'side_hip', times(1 / 4, 0));
      expectRule(skirt, size, 'center_hip', times(0, 0));
      expectRule(skirt, size, 'side_hem', times(1 / 4, 1 / 4));
      expectRule(skirt, size, 'center_hem', times(0, 1 / 4));
    },
  );

  it('grows the finished waist, hip and hem by one inch a size', () => {
    for (const measure of ['waist', 'hip', 'hem'])
      EVEN_SIZES.forEach((size, steps) => {
        expect(girth(skirt, size, measure) - girth(skirt, '10', measure)).toBeCloseTo(steps, 9);
      });
  });
});

describe('the uneven misses grade of the US pattern industry', () => {
  const hip = MISSES.hip_girth;
  const skirt = gradeLazily({ style: 'pencil', chart: MISSES_CHART, base: '12' });

  it.each(MISSES_GRADE)('size %s moves by %i, %i, %i', (size, ...moves) => {
    const [side, dart, hipSide] = moves.map((sixteenths) => sixteenths / 16);
    expectRule(skirt, size, 'side_waist', [side ?? NaN, 0]);
    for (const point of DART) expectRule(skirt, size, point, [dart ?? NaN, 0]);
    for (const point of ['side_hip', 'side_hem', 'side_hip_handle'])
      expectRule(skirt, size, point, [hipSide ?? NaN, 0]);
    for (const point of ['center_waist', 'center_hip', 'center_hem'])
      expectRule(skirt, size, point, [0, 0]);
    expect(girth(skirt, size, 'hip') - 2 - girth(skirt, size, 'waist')).toBeCloseTo(
      Number(size) < 14 ? 9.5 : 10,
      9,
    );
  });

  it('takes in 1/8 in more at each side from size 14 on', () => {
    const takeUp = (size: string) =>
      skirt.findings.filter((finding) => finding.check === 'side-take-up' && finding.size === size);
    for (const [size, side, , hipSide] of MISSES_GRADE)
      for (const { measured } of takeUp(size))
        // In size 12: 36/4 + 1/2 in at the hip less 26 1/2 / 4 + 1 in at the waist.
        expect((measured ?? NaN) / 25.4).toBeCloseTo(9.5 - 7.625 + (hipSide - side) / 16, 9);
    expect(takeUp('14')).toHaveLength(2);
  });

  it('steps of each size from its neighbor are those of the girths, divided by four', () => {
    const steps = stepsOf(skirt.range.rules);
    MISSES_GRADE.forEach(([size], i) => {
      const neighbor = i + Math.sign(3 - i);
      const { x } = movesOf(steps, skirt, size, 'front', 'side_hip');
      expect(x / 25.4).toBeCloseTo(((hip[i] ?? 0) - (hip[neighbor] ?? 0)) / 4, 10);
    });
  });
});

describe('rounding a published chart to eighths', () => {
  // ASTM D5585-11e1, publisher's preview: curvy waist, sizes 00 to 20, base 8. Hip girths of the
  // same table; only the waist is tested. Moves of one quarter in thirty-seconds of an inch.
  const QUARTERS = [
    ['00', -33],
    ['0', -27],
    ['2', -21],
    ['4', -15],
    ['6', -8],
    ['8', 0],
    ['10', 8],
    ['12', 22],
    ['14', 36],
    ['16', 52],
    ['18', 70],
    ['20', 88],
  ] as const;
  const sizes = QUARTERS.map(([size]) => size);
  const chart = chartText(
    'in',
    {
      waist_girth: [23.875, 24.625, 25.375, 26.125, 27, 28, 29, 30.75, 32.5, 34.5, 36.75, 39],
      hip_girth: [34, 34.625, 35.875, 37.125, 38.25, 39.25, 40.25, 41.75, 43.25, 45, 46.75, 48.75],
    },
    sizes,
  );
  const exact = gradeLazily({ style: 'pencil', chart, base: '8' });
  const rounded = gradeLazily({ style: 'pencil', chart, base: '8', round: '1/8in' });

  it.each(QUARTERS)('size %s moves %i thirty-seconds, exactly', (size, thirtySeconds) => {
    expectRule(exact, size, 'side_waist', [thirtySeconds / 32, 0]);
  });

  it.each(QUARTERS)('size %s shares its eighths between front and back', (size, count) => {
    // By whole numbers: a front and a back of `count` thirty-seconds each are `2 * count` together,
    // and their eighths, four thirty-seconds each, come nearest to that at a multiple of four.
    const shared = ['front', 'back'].map(
      (piece) => rule(rounded, size, piece, 'side_waist')[0] * 32,
    );
    for (const own of shared) {
      expect(Math.abs(own / 4 - Math.round(own / 4))).toBeLessThan(1e-9);
      expect(Math.abs(own - count)).toBeLessThan(4);
    }
    const missed = Math.abs((shared[0] ?? NaN) + (shared[1] ?? NaN) - 2 * count);
    const least = Math.min(
      ...[-1, 0, 1].map((k) => Math.abs(4 * (Math.trunc(count / 2) + k) - 2 * count)),
    );
    expect(missed).toBeCloseTo(least, 9);
    // Each half of the garment is a front and a back, so all round it is twice that.
    const off = (girth(rounded, size, 'waist') - girth(exact, size, 'waist')) * 32;
    expect(Math.abs(off)).toBeCloseTo(2 * least, 9);
  });

  it('is an eighth of an inch off at worst, where a quarter is an odd number of thirty-seconds', () => {
    const off = sizes.map((size) =>
      Math.round(Math.abs(girth(rounded, size, 'waist') - girth(exact, size, 'waist')) * 32),
    );
    // -33, -27, -21 and -15 are odd; all others are even.
    expect(off).toEqual([4, 4, 4, 4, 0, 0, 0, 0, 0, 0, 0, 0]);
  });

  it('tells how far rounding each step would have drifted', () => {
    const notes = new Map(
      rounded.findings
        .filter(({ check, subject }) => check === 'rounding' && subject === 'waist')
        .map((finding) => [finding.size, finding]),
    );
    // Worked by hand: the step to each size in thirty-seconds of an inch a quarter, outward from size
    // 8, what it is in whole eighths (a half counts away from zero), and the sum that this has drifted
    // from the true one; all round that is four times as much.
    //   10: 8 is 8, 0 off        12: 14 is 16, 2 off      14: 14 is 16, 4 off
    //   16: 16 is 16, 4 off      18: 18 is 20, 6 off      20: 18 is 20, 8 off
    //   6: -8 is -8, 0 off       4: -7 is -8, -1 off      2: -6 is -8, -3 off
    //   0: -6 is -8, -5 off      00: -6 is -8, -7 off
    const inches: Readonly<Record<string, number>> = {
      ...{ '00': -7 / 8, '0': -5 / 8, '2': -3 / 8, '4': -1 / 8, '6': 0, '8': 0 },
      ...{ '10': 0, '12': 1 / 4, '14': 1 / 2, '16': 1 / 2, '18': 3 / 4, '20': 1 },
    };
    for (const size of sizes)
      expect((notes.get(size)?.expected ?? NaN) / 25.4, size).toBeCloseTo(inches[size] ?? NaN, 9);
    // The published chart's largest size would be an inch too wide, and that alone is a warning.
    const warned = [...notes.values()].filter(({ severity }) => severity === 'warning');
    expect(warned.map(({ size }) => size)).toEqual(['20']);
    expect((notes.get('20')?.measured ?? NaN) / 25.4).toBeCloseTo(0, 9);
  });
});

describe('a metric grade of 5 cm without length', () => {
  // makingfashion.blogspot.com (2008-06), college grade rule sheet: waist 5 cm, length nil; that the
  // hip grows by 5 cm too is assumed. Half for the dart: common practice, no source.
  const sizes = ['S', 'M', 'L', 'XL'];
  const skirt = gradeLazily({
    style: 'pencil',
    chart: chartText('cm', { waist_girth: [66, 71, 76, 81], hip_girth: [92, 97, 102, 107] }, sizes),
    base: 'M',
  });
  const cm = (size: string, piece: string, point: string) =>
    rule(skirt, size, piece, point).map((inches) => inches * 2.54);

  it.each(sizes.map((size, i) => [size, i - 1] as const))(
    'size %s moves %i steps',
    (size, steps) => {
      for (const piece of ['front', 'back']) {
        for (const [point, dx] of [
          ['center_waist', 0],
          ['side_waist', 1.25],
          ['side_hip', 1.25],
          ['side_hem', 1.25],
          ...DART.map((name) => [name, 0.625] as const),
        ] as const) {
          const [gotX, gotY] = cm(size, piece, point);
          expect(gotX).toBeCloseTo(steps * dx, 10);
          expect(gotY).toBeCloseTo(0, 10);
        }
      }
    },
  );

  it('leaves the intake and the length of the darts alone', () => {
    for (const { measures } of skirt.range.sizes) {
      const dart = measures.filter(({ name }) => name.includes('dart'));
      expect(dart).toHaveLength(6);
      for (const { name, value } of dart) {
        // Legs of a dart 2.5 cm wide and 10 or 12.5 cm long.
        const leg = Math.hypot(1.25, name.startsWith('front') ? 10 : 12.5);
        expect(value / 10).toBeCloseTo(name.endsWith('intake') ? 2.5 : leg, 9);
      }
    }
  });
});
