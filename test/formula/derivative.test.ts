import fc from 'fast-check';
import { derivative as judgeOf } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { derivativeAt } from '../../src/formula/derivative';
import {
  fraction,
  fractionOf,
  over,
  plus,
  power,
  times,
  quotient,
} from '../../src/formula/fraction';
import type { Fraction } from '../../src/formula/fraction';
import { linearForm } from '../../src/formula/linear-form';
import { formula, valueOf as valueOfText } from './formulas';
import { runs } from '../samples';

/** What mathjs as it comes, with its simplifier, derives. */
function judged(text: string, name: string, values: Readonly<Record<string, number>>): number {
  return Number(judgeOf(text, name).evaluate({ ...values }) as unknown);
}

const parts = ({ top, bottom }: Fraction): string => (bottom === 1 ? `${top}` : `${top}/${bottom}`);

describe('a fraction', () => {
  it.each([
    [0.25, '1/4'],
    [25.4, '127/5'],
    [-0.3, '-3/10'],
    [60, '60'],
    [0, '0'],
    [1e-7, '1e-7'],
  ])('of the typed number %s is %s', (typed, expected) => {
    expect(parts(fractionOf(typed))).toBe(expected);
  });

  it('is in lowest terms, with its sign above', () => {
    expect(fraction(6, -8)).toEqual({ top: -3, bottom: 4 });
    expect(fraction(-0, 5)).toEqual({ top: 0, bottom: 1 });
  });

  it('adds thirds and twelfths without an error', () => {
    expect(parts(plus(fraction(1, 3), fraction(-1, 12)))).toBe('1/4');
    expect(parts(times(fraction(1, 3), fraction(1, 4)))).toBe('1/12');
    expect(parts(over(fraction(1, 4), fraction(3)))).toBe('1/12');
    expect(parts(power(fraction(2, 3), 3))).toBe('8/27');
  });

  it('becomes a decimal where whole numbers no longer hold it', () => {
    const tiny = power(fraction(1, 3), 40);
    expect(tiny.bottom).toBe(1);
    expect(tiny.top).toBeCloseTo(3 ** -40, 30);
    expect(quotient(plus(fraction(Math.SQRT2), fraction(1, 2)))).toBe(Math.SQRT2 + 0.5);
  });

  it('is worth what its decimals are', () => {
    const any = fc.tuple(fc.integer({ min: -999, max: 999 }), fc.integer({ min: 1, max: 999 }));
    fc.assert(
      fc.property(any, any, ([a, b], [c, d]) => {
        const [left, right] = [fraction(a, b), fraction(c, d)];
        expect(quotient(plus(left, right))).toBeCloseTo(a / b + c / d, 9);
        expect(quotient(times(left, right))).toBeCloseTo((a / b) * (c / d), 6);
        if (c !== 0)
          expect(quotient(over(left, right)) / (a / b / (c / d) || 1)).toBeCloseTo(
            a === 0 ? 0 : 1,
            9,
          );
      }),
    );
  });
});

/** Terms of a linear form as text; `k` is a constant, 1/3 exactly. */
function terms(text: string): Record<string, string> | undefined {
  const form = linearForm(formula(text), (name) => (name === 'k' ? fraction(1, 3) : undefined));
  if (form === undefined) return undefined;
  return Object.fromEntries([...form.terms].map(([name, term]) => [name, parts(term)]));
}

describe('a linear form', () => {
  it.each([
    ['waist_girth/4 + waist_ease/4 + 1 in', { waist_girth: '1/4', waist_ease: '1/4' }],
    [
      'side_waist.x + 2/3*(side_hip.x - side_waist.x)',
      { 'side_waist.x': '1/3', 'side_hip.x': '2/3' },
    ],
    ['k*(a - b)/4 + (1 - k)*a', { a: '3/4', b: '-1/12' }],
    ['-(a + 0.3*b) - +a', { a: '-2', b: '-3/10' }],
    ['a - a + b', { b: '1' }],
    ['a*(4 - 3)^2 + b^1 + c^0', { a: '1', b: '1' }],
    ['sqrt(4)*a + max(k, 1/4)*b', { a: '2', b: '1/3' }],
    // Nothing times anything, however curved, is nothing.
    ['0*a^2 + (k - k)*sin(a/b) + 0/a + b', { b: '1' }],
  ])('of %s has exact coefficients', (text, expected) => {
    expect(terms(text)).toEqual(expected);
  });

  it('gives a constant its value', () => {
    const form = linearForm(formula('(1 in + 2 cm)*k + atan(0)'), () => fraction(1, 3));
    expect(form?.terms.size).toBe(0);
    expect(form && parts(form.constant)).toBe('227/15');
  });

  it.each(['a*b', 'a/b', '1/a', 'a^2', 'sqrt(a)', 'max(a, b)', 'abs(a)', 'a + sin(a/b)'])(
    'is not what %s has',
    (text) => {
      expect(terms(text)).toBeUndefined();
    },
  );

  it('has the coefficients that mathjs derives', () => {
    fc.assert(
      fc.property(anyLinear, (text) => {
        const form = linearForm(formula(text), () => undefined);
        for (const name of ['a', 'b', 'c']) {
          const found = quotient(form?.terms.get(name) ?? fraction(0));
          const expected = judged(text, name, { a: 2, b: 3, c: 5 });
          expect(form === undefined ? NaN : found).toBeCloseTo(expected, 9);
        }
      }),
      { numRuns: runs(10) },
    );
  });
});

/** Sums and multiples of a, b and c, in any nesting. */
const anyLinear: fc.Arbitrary<string> = fc.letrec<{ linear: string }>((tie) => ({
  linear: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom('a', 'b', 'c', '1.5', '2'),
    fc.tuple(tie('linear'), tie('linear')).map(([l, r]) => `(${l} + ${r})`),
    fc.tuple(tie('linear'), tie('linear')).map(([l, r]) => `(${l} - ${r})`),
    fc.tuple(tie('linear'), fc.constantFrom('3', '1/3', '0.3')).map(([l, n]) => `(${n})*(${l})`),
    fc.tuple(tie('linear'), fc.constantFrom('4', '0.8')).map(([l, n]) => `(${l})/${n}`),
    tie('linear').map((l) => `-(${l})`),
  ),
})).linear;

const AT = { a: 1.3, b: 0.7, 'side_hip.x': 2.1 };

function slope(text: string, name: string): number | undefined {
  const at: Readonly<Record<string, number>> = AT;
  return derivativeAt(formula(text), name, (other) => at[other] ?? NaN);
}

describe('a derivative', () => {
  it.each([
    ['a*b', 0.7],
    ['b/a', -0.7 / 1.69],
    ['a/(a + b)', 0.7 / 4],
    ['a^3', 3 * 1.69],
    ['sqrt(a)', 0.5 / Math.sqrt(1.3)],
    ['sin(a)', Math.cos(1.3)],
    ['cos(2*a)', -2 * Math.sin(2.6)],
    ['tan(a*b)', 0.7 / Math.cos(0.91) ** 2],
    ['atan(a)', 1 / 2.69],
    ['abs(b - a)', 1],
    ['b + 1 in', 0],
    ['a*max(b, 1)', 1],
    ['sqrt(a^2 + side_hip.x^2)', 1.3 / Math.hypot(1.3, 2.1)],
  ])('of %s by a', (text, expected) => {
    expect(slope(text, 'a')).toBeCloseTo(expected, 12);
  });

  it('by a coordinate', () => {
    expect(slope('a/side_hip.x', 'side_hip.x')).toBeCloseTo(-1.3 / 4.41, 12);
  });

  it('is not known of a choice', () => {
    expect(slope('2*max(a^2, b)', 'a')).toBeUndefined();
    expect(slope('min(b, a)', 'a')).toBeUndefined();
  });

  it('is not finite at a kink', () => {
    expect(slope('abs(a - 1.3)', 'a')).toBeNaN();
    expect(slope('sqrt(a - 1.3)', 'a')).toBe(Infinity);
  });

  it('is what mathjs derives and simplifies, and what differences show', () => {
    fc.assert(
      fc.property(anySmooth, fc.constantFrom('a' as const, 'b' as const), (text, name) => {
        const found = slope(text, name) ?? NaN;
        const scale = Math.max(1, Math.abs(found));
        expect(Math.abs(found - judged(text, name, AT)) / scale).toBeLessThan(1e-9);
        const at = (step: number): number => valueOfText(text, { ...AT, [name]: AT[name] + step });
        const near = (at(1e-5) - at(-1e-5)) / 2e-5;
        expect(Math.abs(found - near) / scale).toBeLessThan(1e-4);
      }),
      { numRuns: runs(8, 200) },
    );
  });
});

/** Formulas that stay smooth near the numbers AT. */
const anySmooth: fc.Arbitrary<string> = fc.letrec<{ smooth: string }>((tie) => ({
  smooth: fc.oneof(
    { maxDepth: 3 },
    fc.constantFrom('a', 'b', '3'),
    fc
      .tuple(tie('smooth'), fc.constantFrom('+', '-', '*'), tie('smooth'))
      .map(([l, op, r]) => `(${l} ${op} ${r})`),
    fc.tuple(tie('smooth'), tie('smooth')).map(([l, r]) => `(${l})/(1 + (${r})^2)`),
    tie('smooth').map((part) => `sqrt(1 + (${part})^2)`),
    fc
      .tuple(fc.constantFrom('sin', 'cos', 'atan'), tie('smooth'))
      .map(([name, part]) => `${name}(${part})`),
    tie('smooth').map((part) => `tan(atan(${part})/2)`),
  ),
})).smooth;
