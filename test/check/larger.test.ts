import { describe, expect, it } from 'vitest';
import { labelRanks } from '../../src/chart/label-order';
import { checkLarger } from '../../src/check/larger';
import { FRONT, graded } from '../given/sheets';

describe('labelRanks', () => {
  it.each([
    ['8,10,12', 'up'],
    ['16,14,12', 'down'],
    ['00,0,2', 'up'],
    ['14W,16W,18W', 'up'],
    ['EU 44,EU 40,EU 36', 'down'],
    ['XXS,XS,S,M,L,XL,2XL,3XL', 'up'],
    ['L,M,S', 'down'],
    ['8,8T,10', undefined],
    ['8,12,10', 'both'],
    ['petite,tall', undefined],
    ['8', undefined],
  ])('of %s is %s', (labels, order) => {
    const ranks = labelRanks(labels.split(','));
    const steps = ranks?.slice(1).map((rank, i) => rank - (ranks[i] ?? rank));
    const told = steps?.every((step) => step >= 0)
      ? 'up'
      : steps?.every((step) => step <= 0)
        ? 'down'
        : 'both';
    expect(ranks && told).toBe(order);
  });
});

describe('checkLarger', () => {
  const told = (labels: string, values: readonly number[]) =>
    checkLarger(labels.split(','), [
      {
        piece: '',
        subject: 'waist_girth',
        name: 'the waist',
        quantity: 'length',
        values,
        slack: 1,
        show: String,
      },
    ]).map(({ severity, size }) => `${severity} ${size}`);

  it.each([
    ['8,10,12', [30, 28, 26], ['fail 8-12']],
    // The chart's reader turns such a chart; the labels still say which size is the larger.
    ['12,10,8', [26, 28, 30], ['fail 8-12']],
    ['12,10,8', [30, 28, 26], []],
    ['8,10,12,14', [26, 30, 28, 32], ['fail 10-12']],
    // Two heads exchanged: 38 would be larger than 40.
    ['36,40,38,42', [66, 69, 72, 75], ['fail 38-40']],
    ['8,10,12', [26, 26, 25], []],
    ['petite,misses,tall', [30, 28, 26], ['warning petite-tall']],
  ] as const)('of %s with %j', (labels, values, expected) => {
    expect(told(labels, values)).toEqual(expected);
  });
});

describe('a given pattern', () => {
  /** The front with steps of a quarter inch at the side, at waist, hip and hem, as given. */
  const rules = (waist: string, hip: string, hem: string) =>
    [
      '# sizes: 8, 10, 12, 14',
      'rule,piece,point,size,dx,dy,step_dx,step_dy',
      `,front,center_waist,,,,0,0\n,front,side_waist,,,,${waist},0`,
      `,front,side_hip,,,,${hip},0\n,front,side_hem,,,,${hem},0\n,front,center_hem,,,,0,0`,
    ].join('\n');
  const told = (text: string) =>
    graded(FRONT, text)
      .findings.filter(({ check }) => check === 'larger-is-smaller')
      .map(({ severity, size, piece, subject }) => `${severity} ${size} ${piece} ${subject}`);

  it('that grows is well', () => {
    expect(told(rules('1/4', '1/4', '1/4'))).toEqual([]);
  });

  it('whose signs are turned fails in every piece, with its waist', () => {
    expect(told(rules('-1/4', '-1/4', '-1/4'))).toEqual([
      'fail 8-14 front area',
      'fail 8-14 front waist',
    ]);
  });

  it('whose waist alone shrinks fails by the waist', () => {
    expect(told(rules('-1/4', '1/4', '1/4'))).toEqual(['fail 8-14 front waist']);
  });

  it('has its area by the trapezoids between its points', () => {
    // Size 12, in inches, y down: 7.5 to 9 wide over 8, then 9 wide over 17, less the open dart of
    // 1 wide and 4 deep: 66 + 153 - 2 = 217. Each quarter inch takes 1/4 * 25 = 6.25, and nothing
    // of the dart: 8 has 229.5 and 14 has 210.75.
    const [area] = graded(FRONT, rules('-1/4', '-1/4', '-1/4')).findings.filter(
      ({ check }) => check === 'larger-is-smaller',
    );
    expect((area?.expected ?? NaN) / 25.4 ** 2).toBeCloseTo(229.5, 6);
    expect((area?.measured ?? NaN) / 25.4 ** 2).toBeCloseTo(210.75, 6);
  });
});
