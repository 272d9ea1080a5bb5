import { EVEN_CHART, EVEN_SIZES, MISSES_CHART, MISSES_GRADE, MISSES_SIZES } from '../../published';
import { describe, expect, it } from 'vitest';
import type { HandIn, MarkRequest, Marking } from '../../../src/study/mark/mark-sheet';
import { markSheet } from '../../../src/study/mark/mark-sheet';
import type { DraftedCase } from '../../../src/study/mark/reference';
import { chartText } from '../../skirts';

type Line = readonly [point: string, axis: 'dx' | 'dy', ...cells: (string | number)[]];

/** A sheet as typed: one size a column, in `unit`. */
function sheet(unit: string, sizes: readonly string[], lines: readonly Line[]): string {
  return [
    `# unit: ${unit}`,
    ['point', 'axis', ...sizes].join(),
    ...lines.map((l) => l.join()),
    '',
  ].join('\n');
}

function wrong({ cells }: Marking): readonly string[] {
  return cells
    .filter(({ verdict }) => verdict === 'wrong')
    .map(({ piece, point, axis, size }) => `${piece}.${point} d${axis} ${size}`);
}

const slipsOf = ({ diagnosis }: Marking) => diagnosis.found.map(({ slip }) => slip.id);

const even = (share: number, count = 4) =>
  Array.from({ length: count }, (_, i) => String(i * share));

// The published table counts y upward.
describe('the even one-inch grade of the front as a key', () => {
  const sizes = EVEN_SIZES;
  const request = (
    lines: readonly Line[],
    more: Partial<DraftedCase & HandIn> = {},
  ): MarkRequest => ({
    chart: EVEN_CHART,
    base: '10',
    style: 'pencil',
    pieces: ['front'],
    sheet: sheet('in', sizes, lines),
    ...more,
  });
  const still = (point: string): Line[] => [
    [`front.${point}`, 'dx', ...even(0)],
    [`front.${point}`, 'dy', ...even(0)],
  ];
  const key = (down: 1 | -1): Line[] => [
    ...still('center_waist'),
    ...['dart_inner', 'dart_tip', 'dart_outer'].flatMap((point): Line[] => [
      [`front.${point}`, 'dx', ...even(1 / 8)],
      [`front.${point}`, 'dy', ...even(0)],
    ]),
    ['front.side_waist', 'dx', ...even(1 / 4)],
    ['front.side_waist', 'dy', ...even(0)],
    ['front.side_hip', 'dx', ...even(1 / 4)],
    ['front.side_hip', 'dy', ...even(0)],
    ['front.side_hem', 'dx', ...even(1 / 4)],
    ['front.side_hem', 'dy', ...even(down / 4)],
    ['front.center_hem', 'dx', ...even(0)],
    ['front.center_hem', 'dy', ...even(down / 4)],
  ];

  it.each([
    ['down', 1],
    ['up', -1],
  ] as const)('is right with y %s', (way, down) => {
    const marking = markSheet(request(key(down)));
    expect(marking.cells).toHaveLength(48);
    expect(marking.cells.every(({ verdict }) => verdict === 'right')).toBe(true);
    expect(marking.convention.up).toBe(way === 'up');
  });

  it('is right from any zero, and the zero is found', () => {
    // Seen from the side at the hip, the center moves by the quarter the other way.
    const moved = key(1).map(([point, axis, ...cells]): Line => [
      point,
      axis,
      ...cells.map((cell, i) => (axis === 'dx' ? Number(cell) - i / 4 : cell)),
    ]);
    const marking = markSheet(request(moved));
    expect(wrong(marking)).toEqual([]);
    expect(['side_waist', 'side_hip']).toContain(marking.convention.zeros.get('front')?.[0]);
    expect(wrong(markSheet(request(moved, { zero: 'side_hip' })))).toEqual([]);
    expect(wrong(markSheet(request(moved, { zero: 'center_waist' }))).length).toBeGreaterThan(9);
  });

  it('tells the whole step from a quarter', () => {
    const lines = key(1).map((line): Line =>
      line[0] === 'front.side_hip' && line[1] === 'dx' ? [line[0], 'dx', ...even(1)] : line,
    );
    const marking = markSheet(request(lines));
    expect(slipsOf(marking)).toEqual(['whole']);
    expect(wrong(marking)).toEqual(['12', '14', '16'].map((size) => `front.side_hip dx ${size}`));
    // The front alone is wrong: two quarters of three inches more in size 16.
    const worn = marking.worn.at(-1);
    const hip = (
      measures: typeof worn extends undefined ? never : NonNullable<typeof worn>['sheet'],
    ) => measures.find(({ name }) => name === 'hip')?.value ?? NaN;
    expect((hip(worn?.sheet ?? []) - hip(worn?.right ?? [])) / 25.4).toBeCloseTo(2 * 2.25, 9);
  });

  it('tells a tip left behind where only dx is handed in', () => {
    const lines = key(1)
      .filter(([, axis]) => axis === 'dx')
      .map((line): Line => (line[0] === 'front.dart_tip' ? [line[0], 'dx', ...even(0)] : line));
    expect(slipsOf(markSheet(request(lines)))).toEqual(['dart-tip']);
  });

  it('counts what is blank or not there as missing', () => {
    const lines = key(1)
      .filter(([point]) => point !== 'front.dart_tip')
      .map((line): Line =>
        line[0] === 'front.side_hem' ? [line[0], line[1], '', '', '', ''] : line,
      );
    const missing = markSheet(request(lines)).cells.filter(({ verdict }) => verdict === 'missing');
    expect(missing).toHaveLength(12);
    expect(new Set(missing.map(({ point }) => point))).toEqual(new Set(['dart_tip', 'side_hem']));
  });
});

describe('the uneven misses grade as a key', () => {
  const side = MISSES_GRADE.map(([, own]) => own);
  const hip = MISSES_GRADE.map(([, , , own]) => own);
  const sixteenths = (counts: readonly number[]) => counts.map((count) => `${count}/16`);
  const marked = (waist: readonly number[], dart = side.map((count) => count / 2)) =>
    markSheet({
      style: 'pencil',
      chart: MISSES_CHART,
      base: '12',
      sheet: sheet('in', MISSES_SIZES, [
        ['back.side_waist', 'dx', ...sixteenths(waist)],
        ...['dart_inner', 'dart_tip', 'dart_outer'].map((point): Line => [
          `back.${point}`,
          'dx',
          ...sixteenths(dart),
        ]),
        ['back.side_hip', 'dx', ...sixteenths(hip)],
        ['back.side_hem', 'dx', ...sixteenths(hip)],
      ]),
    });

  it('is right', () => {
    expect(wrong(marked(side))).toEqual([]);
  });

  it('tells the hip taken for the waist', () => {
    const marking = marked(hip);
    expect(slipsOf(marking)).toEqual(['hip-for-waist']);
    expect(wrong(marking)).toEqual(
      ['14', '16', '18', '20'].map((size) => `back.side_waist dx ${size}`),
    );
  });

  it('tells the break that comes one size too early', () => {
    // The waist goes from steps of 1 1/2 in to 2 in between 14 and 16; here already at 12-14.
    const marking = marked(
      [-14, -10, -6, 0, 8, 16, 24, 32].map((n, i) => (i > 3 ? (side[i] ?? 0) + 2 : n)),
    );
    // In this chart the hip breaks there, so that both slips give the same numbers.
    expect(marking.diagnosis.found).toHaveLength(1);
    const [found] = marking.diagnosis.found;
    expect([found?.slip, ...(found?.alike ?? [])].map((slip) => slip?.id)).toContain(
      'break 12-14 as 14-16',
    );
  });
});

// ASTM D5585-11e1, publisher's preview: curvy waist, base 8; hip girths of the same table. What
// rounding makes of it is worked out by hand.
describe('rounding as a key', () => {
  const sizes = ['00', '0', '2', '4', '6', '8', '10', '12', '14', '16', '18', '20'];
  const exact = [-33, -27, -21, -15, -8, 0, 8, 22, 36, 52, 70, 88];
  const chart = chartText(
    'in',
    {
      waist_girth: [23.875, 24.625, 25.375, 26.125, 27, 28, 29, 30.75, 32.5, 34.5, 36.75, 39],
      hip_girth: [34, 34.625, 35.875, 37.125, 38.25, 39.25, 40.25, 41.75, 43.25, 45, 46.75, 48.75],
    },
    sizes,
  );
  const marked = (cells: readonly number[], tolerance: string) =>
    markSheet({
      style: 'pencil',
      chart,
      base: '8',
      tolerance,
      sheet: sheet('in', sizes, [['front.side_waist', 'dx', ...cells]]),
    });
  const rounded = (count: number) => (Math.sign(count) * Math.floor((Math.abs(count) + 2) / 4)) / 8;

  it('is right to an eighth, cumulatively, within a sixteenth', () => {
    expect(wrong(marked(exact.map(rounded), '1/16in'))).toEqual([]);
    const strict = marked(exact.map(rounded), '1/32in');
    expect(slipsOf(strict)).toEqual(['coarse 1/8 in']);
  });

  it('drifts where each step is rounded, to 3 in for size 20 and -1 1/4 in for 00', () => {
    // The steps from the base, rounded to eighths by hand: upward 8, 14, 14, 16, 18, 18 of 32 to
    // 2, 4, 4, 4, 5, 5 of 8; downward 8, 7, 6, 6, 6 of 32 to 2, 2, 2, 2, 2 of 8.
    const drifted = [-10, -8, -6, -4, -2, 0, 2, 6, 10, 14, 19, 24].map((count) => count / 8);
    const marking = marked(drifted, '1/16in');
    expect(slipsOf(marking)).toEqual(['rounded-steps 1/8 in']);
    expect(wrong(marking)).toContain('front.side_waist dx 20');
  });
});

// makingfashion.blogspot.com (2008-06), college grade rule sheet: waist 5 cm, length nil; hip 5 cm
// is assumed. Half for the dart: common practice, no source.
describe('the metric grade of 5 cm as a key', () => {
  const sizes = ['S', 'M', 'L', 'XL'];
  const chart = chartText(
    'cm',
    { waist_girth: [66, 71, 76, 81], hip_girth: [92, 97, 102, 107] },
    sizes,
  );
  const times = (share: number) => [-1, 0, 1, 2].map((steps) => steps * share);
  const marked = (factor: number) =>
    markSheet({
      style: 'pencil',
      chart,
      base: 'M',
      sheet: sheet('cm', sizes, [
        ['front.side_waist', 'dx', ...times(1.25 * factor)],
        ['front.side_hip', 'dx', ...times(1.25 * factor)],
        ['front.dart_tip', 'dx', ...times(0.625 * factor)],
        ['front.center_hem', 'dy', ...times(0)],
      ]),
    });

  it('is right', () => {
    expect(wrong(marked(1))).toEqual([]);
  });

  it('tells inches in a sheet of centimeters', () => {
    expect(slipsOf(marked(1 / 2.54))).toEqual(['centimeters']);
  });
});
