import fc from 'fast-check';
import { all, create } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { valueOf } from './formulas';
import { runs } from '../samples';

// The reference is the whole of mathjs (mathjs.org), which evaluates the same text by its own way.
const reference = create(all ?? {});

const VALUES = { waist_girth: 673.1, hip_girth: 914.4, ease: -12.7, share: 0.25 };
const NAMES = Object.keys(VALUES);

const { expression } = fc.letrec<{ expression: string; atom: string }>((tie) => ({
  atom: fc.oneof(
    fc.constantFrom(...NAMES),
    fc.integer({ min: 0, max: 99 }).map(String),
    fc.tuple(fc.nat(99), fc.nat(999)).map(([whole, part]) => `${whole}.${part}`),
  ),
  expression: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    tie('atom'),
    fc
      .tuple(
        tie('expression'),
        fc.constantFrom('+', '-', '*', '/', ' + ', ' - '),
        tie('expression'),
      )
      .map((parts) => parts.join('')),
    tie('expression').map((inner) => `(${inner})`),
    tie('expression').map((inner) => `-${inner}`),
    fc.tuple(tie('atom'), fc.nat(4)).map(([base, power]) => `${base}^${power}`),
    fc
      .tuple(fc.constantFrom('abs', 'sqrt', 'sin', 'cos', 'tan', 'atan'), tie('expression'))
      // The root of a negative number is complex in mathjs; here it is no number at all.
      .map(([name, inner]) => (name === 'sqrt' ? `sqrt(abs(${inner}))` : `${name}(${inner})`)),
    fc
      .tuple(
        fc.constantFrom('min', 'max'),
        fc.array(tie('expression'), { minLength: 2, maxLength: 4 }),
      )
      .map(([name, parts]) => `${name}(${parts.join(', ')})`),
  ),
}));

describe('compiled formulas', () => {
  it('give what mathjs itself gives', () => {
    fc.assert(
      fc.property(expression, (text) => {
        const expected = reference.evaluate(text, { ...VALUES }) as number;
        const actual = valueOf(text, VALUES);
        if (Number.isNaN(expected)) expect(actual).toBeNaN();
        else if (!Number.isFinite(expected)) expect(actual).toBe(expected);
        else expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected));
      }),
      { numRuns: runs(100) },
    );
  });

  it('give lengths as mathjs units do', () => {
    for (const text of ['2 inch', '(1 + 1/2) inch + 3 mm', '1/2 cm', '10 cm - 3/8 inch'])
      expect(valueOf(text.replaceAll('inch', 'in'))).toBeCloseTo(
        reference.evaluate(`number(${text}, mm)`) as number,
        10,
      );
  });

  it('give no number for the root of a negative one', () => {
    expect(valueOf('sqrt(-1)')).toBeNaN();
    expect(valueOf('1/0')).toBe(Infinity);
  });
});
