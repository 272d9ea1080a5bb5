import { MISSES_CHART, MISSES_GRADE } from '../published';
import { describe, expect, it } from 'vitest';
import { toMillimeters } from '../../src/units';
import { expectRefusal } from '../expect-refusal';
import { FRONT, evenRules, graded, move } from './sheets';

const inch = (value: number): number => toMillimeters(value, 'in');

describe('the US 1-inch even grade as a rule sheet', () => {
  // motley-muse.com, skirt grading, for the steps; Threads magazine no. 101 and
  // fashion-incubator.com, How to create grade rules 2, for a quarter of the girth to each quarter;
  // the dart by half of it: common practice, no source. y runs up there.
  const RULES = evenRules('8, 10, 12, 14, 16', 'up');
  const EXPECTED = {
    center_waist: [0, 0],
    dart_in: [1 / 8, 0],
    dart_tip: [1 / 8, 0],
    dart_out: [1 / 8, 0],
    side_waist: [1 / 4, 0],
    side_hip: [1 / 4, 0],
    side_hem: [1 / 4, 1 / 4],
    center_hem: [0, 1 / 4],
  } as const;

  it.each([
    ['8', -2],
    ['10', -1],
    ['12', 0],
    ['14', 1],
    ['16', 2],
  ] as const)('moves every point of size %s by %i steps', (size, steps) => {
    const result = graded(FRONT, RULES);
    for (const [point, [dx, dy]] of Object.entries(EXPECTED)) {
      const { x, y } = move(result, size, 'front', point);
      expect(x, `${point} dx`).toBeCloseTo(steps * inch(dx), 9);
      expect(y, `${point} dy`).toBeCloseTo(steps * inch(dy), 9);
    }
  });

  it('moves the dart as a whole where only its ends or none of it has a rule', () => {
    const some = RULES.replace('front,dart_tip,1/8,0\n', '');
    for (const [dx, rules] of [
      [1 / 8, some],
      // Darts closed, the waist is 6.5 in to the side and 3 in to the dart.
      [(3 / 6.5) * (1 / 4), some.replace(/front,dart.*\n/gu, '')],
    ] as const) {
      const result = graded(FRONT, rules);
      for (const point of ['dart_in', 'dart_tip', 'dart_out']) {
        expect(move(result, '14', 'front', point).x, point).toBeCloseTo(inch(dx), 9);
      }
      const note = result.findings.find(
        ({ check, subject }) => check === 'point-unruled' && subject === 'dart_tip',
      );
      expect(note?.severity).toBe('note');
    }
  });
});

describe('the uneven misses grade as a rule sheet', () => {
  const FORMULAS = `piece,point,dx,dy
front,center_waist,0,0
front,dart_in,1/8 waist_girth,0
front,dart_out,1/8 waist_girth,0
front,side_waist,waist_girth / 4,0
front,side_hip,1/4 hip_girth,0
front,side_hem,1/4 hip_girth,0
front,center_hem,0,0
`;
  const POINTS = { side_waist: 1, dart_tip: 2, side_hip: 3 } as const;
  const MOVES = `piece,point,size,dx,dy
${Object.entries(POINTS)
  .flatMap(([point, column]) =>
    MISSES_GRADE.map((grade) => `front,${point},${grade[0]},${grade[column] / 16},0`),
  )
  .join('\n')}
`;

  it.each([
    ['formulas of the chart', FORMULAS],
    ['moves a size', MOVES],
  ])('is exact in sixteenths from %s', (_, rules) => {
    const result = graded(
      FRONT,
      rules,
      rules === FORMULAS ? { chart: { text: MISSES_CHART, file: 'misses.csv' } } : {},
    );
    for (const grade of MISSES_GRADE) {
      const [size] = grade;
      for (const [point, column] of Object.entries(POINTS)) {
        expect(move(result, size, 'front', point).x, `${point} of ${size}`).toBeCloseTo(
          inch(grade[column] / 16),
          9,
        );
      }
      const takeUp =
        inch(1.5) +
        move(result, size, 'front', 'side_hip').x -
        move(result, size, 'front', 'side_waist').x;
      expect(takeUp).toBeCloseTo(inch(1.5 + (Number(size) >= 14 ? 1 / 8 : 0)), 9);
    }
  });

  it('keeps formulas in the rules that it writes', () => {
    const result = graded(FRONT, FORMULAS, { chart: { text: MISSES_CHART, file: 'misses.csv' } });
    expect(result.ruleTexts[0]?.[4]?.x.text).toBe('waist_girth / 4');
  });
});

it('refuses formulas of a chart of one body, which has no increments', () => {
  const chart = {
    text: '# unit: in\nmeasurement,8\nwaist_girth,27\nhip_girth,37\n',
    file: 'me.csv',
  };
  expectRefusal(
    () => graded(FRONT, evenRules('8,10'), { chart }),
    'sizes-too-few',
    { file: 'me.csv' },
    'the chart has one size',
  );
});

describe('cumulative rounding of a rule sheet', () => {
  // ASTM D5585-11e1, publisher's preview: curvy waist; the hips are ours, 10 in more.
  const WAISTS = '23.875,24.625,25.375,26.125,27,28,29,30.75,32.5,34.5,36.75,39'.split(',');
  const SIZES = '00,0,2,4,6,8,10,12,14,16,18,20'.split(',');
  const CHART = `# unit: in
measurement,${SIZES.join(',')}
waist_girth,${WAISTS.join(',')}
hip_girth,${WAISTS.map((waist) => Number(waist) + 10).join(',')}
`;
  const RULES = 'piece,point,dx,dy\nfront,side_waist,1/4 waist_girth,0\n';
  const DRAWN = FRONT.replace('# base: 12', '# base: 8');
  const options = { chart: { text: CHART, file: 'curvy.csv' }, base: '8' };

  it('gives the exact quarters unrounded', () => {
    const result = graded(DRAWN, RULES, options);
    const exact = {
      '00': -33 / 32,
      '4': -15 / 32,
      '6': -1 / 4,
      '12': 11 / 16,
      '16': 13 / 8,
      '20': 11 / 4,
    };
    for (const [size, dx] of Object.entries(exact)) {
      expect(move(result, size, 'front', 'side_waist').x, size).toBeCloseTo(inch(dx), 9);
    }
  });

  it('keeps the garment within a quarter inch, and the largest size exact', () => {
    const result = graded(DRAWN, RULES, { ...options, round: '1/8in' });
    expect(move(result, '20', 'front', 'side_waist').x).toBeCloseTo(inch(2.75), 9);
    SIZES.forEach((size, i) => {
      const off = 4 * move(result, size, 'front', 'side_waist').x - inch(Number(WAISTS[i]) - 28);
      expect(Math.abs(off), size).toBeLessThanOrEqual(inch(1 / 4) + 1e-9);
    });
  });
});
