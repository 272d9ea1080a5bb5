import { describe, expect, it } from 'vitest';
import { gradeChart, gradePattern } from '../../src/index';
import { chartText } from '../skirts';

const SIZES = ['6', '8', '10', '12', '14', '16', '18', '20'];

/** Hips of 36 in and 2 in more a size. */
function found(base: string, sizes: readonly string[] = SIZES) {
  const row = (first: number) => sizes.map((_, i) => first + 2 * i);
  const chart = chartText('in', { waist_girth: row(26), hip_girth: row(36) }, sizes);
  return gradeChart({ chart, base, style: 'pencil' }).findings.filter(
    ({ check }) => check === 'far-from-base',
  );
}

describe('a range that outgrows its base', () => {
  // Common practice, no source: two or three sizes to either side, taken as 6 in of hip.
  it('is noted once, with the sizes beyond 6 in of hip and a second base among them', () => {
    const [first, ...more] = found('10');
    expect(more).toEqual([]);
    expect(first).toMatchObject({ severity: 'note', size: '', piece: '', subject: 'base' });
    expect(first?.measured).toBeCloseTo(10 * 25.4, 9);
    expect(first?.expected).toBeCloseTo(6 * 25.4, 9);
    expect(first?.message).toMatch(/^18, 20: up to 10 in of hip from the base 10/u);
    expect(first?.message).toContain('a base of their own too, such as 20');
  });

  it('names a base for each side', () => {
    const sizes = ['1', '2', '3', '4', '5', '6', '7', '8', '9'];
    expect(found('5', sizes)[0]?.message).toContain('such as 1 and 9');
  });

  it('is not there where three sizes lie to either side', () => {
    expect(found('12', SIZES.slice(0, 7))).toEqual([]);
    expect(found('12', SIZES)).toHaveLength(1);
  });

  const PATTERN =
    '# unit: in\npiece,point,x,y\nfront,a,0,0\nfront,b,10,0\nfront,c,10,20\nfront,d,0,20\n';

  function given(sizes: readonly string[]) {
    const rules = [
      `# unit: in\n# base: M\n# sizes: ${sizes.join(', ')}\npiece,point,size,step_dx,step_dy`,
      ...['b', 'c'].map((point) => `front,${point},,1/2,0`),
      ...['a', 'd'].map((point) => `front,${point},,0,0`),
    ].join('\n');
    return gradePattern({
      pattern: { text: `# base: M\n${PATTERN}`, file: 'base.csv' },
      rules: { text: `${rules}\n`, file: 'rules.csv' },
    }).findings.filter(({ check }) => check === 'far-from-base');
  }

  it('is told of a given pattern by the number of its sizes', () => {
    expect(given(['XS', 'S', 'M', 'L', 'XL'])).toEqual([]);
    const [first] = given(['S', 'M', 'L', 'XL', '2XL', '3XL']);
    expect(first).toMatchObject({ severity: 'note', measured: 4, expected: 3 });
    expect(first?.message).toMatch(/^3XL: up to 4 sizes from the base M/u);
  });
});
