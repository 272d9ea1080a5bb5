import { describe, expect, it } from 'vitest';
import { expectRefusal } from '../expect-refusal';
import { PLACE, formula, valueOf } from './formulas';

describe('allowed formulas', () => {
  it.each([
    ['3', 3],
    ['.5', 0.5],
    ['1e3', 1000],
    ['-2 + 5', 3],
    ['+2', 2],
    ['--2', 2],
    ['2 - 3 - 4', -5],
    ['2/4/2', 0.25],
    ['2 + 3 * 4', 14],
    ['(2 + 3) * 4', 20],
    ['2 ^ 3', 8],
    ['-2 ^ 2', -4],
    ['abs(-3)', 3],
    ['sqrt(16)', 4],
    ['min(3, 1, 2)', 1],
    ['max(3, 1, 2)', 3],
    ['sin(0) + cos(0) + tan(0)', 1],
    ['4 * atan(1)', Math.PI],
  ])('%s', (text, value) => {
    expect(valueOf(text)).toBeCloseTo(value, 12);
  });

  it.each([
    ['2 - 1/2', 1.5],
    ['2 cm - 1/2 cm', 15],
    ['3/4-1/2', 0.25],
    ['0.75 -1/2', 0.25],
    ['2 in -1/2 in', 38.1],
  ])('%s takes away', (text, value) => {
    expect(valueOf(text)).toBeCloseTo(value, 12);
  });

  it.each(['2-1/2', '2 -1/2', '2- 1/2', '(2-1/2) in', 'waist + 2 -1/2 in'])(
    '"%s" may be a mixed number or a difference, and is refused',
    (text) => {
      expectRefusal(() => formula(text), 'formula-malformed', PLACE, '2 - 1/2');
    },
  );

  it('units stand behind a number or a fraction', () => {
    expect(valueOf('2 in')).toBeCloseTo(50.8, 12);
    expect(valueOf('2in')).toBeCloseTo(50.8, 12);
    expect(valueOf('1 1/2 in')).toBeCloseTo(38.1, 12);
    expect(valueOf('-1 1/2in')).toBeCloseTo(-38.1, 12);
    expect(valueOf('3/8 in')).toBeCloseTo(9.525, 12);
    expect(valueOf('1/2 cm')).toBe(5);
    expect(valueOf('2.5cm + 3 mm')).toBe(28);
    expect(valueOf('2 * 1 1/2 in')).toBeCloseTo(76.2, 12);
    expect(valueOf('10 cm - 1 1/4 in')).toBeCloseTo(68.25, 12);
    expect(valueOf('(1/2) in / 2')).toBeCloseTo(6.35, 12);
  });

  it('names and coordinates are kept in the order of first use', () => {
    const { names } = formula('waist_girth/4 + side_hip.x - waist_girth + side_hip.y*2');
    expect(names).toEqual(['waist_girth', 'side_hip.x', 'side_hip.y']);
    expect(valueOf('a - b.x', { a: 7, 'b.x': 2 })).toBe(5);
  });

  it('are kept as written, with their place', () => {
    expect(formula(' 1 1/2 in ')).toMatchObject({ text: ' 1 1/2 in ', place: PLACE });
  });
});

describe('refused formulas', () => {
  it.each([
    ['2 waist_girth', 'the product without a sign'],
    ['waist_girth hip_girth', 'the product without a sign'],
    ['2(3)', 'the product without a sign'],
    ['waist_girth in', 'the product without a sign'],
    ['2 in cm', 'the product without a sign'],
    ['2 inches', 'the product without a sign'],
    ['2 in^2', 'the product without a sign'],
    ['5%', 'a percent sign'],
    ['5 % 3', 'the operator %'],
    ['"text"', 'the text or truth value "text"'],
    ["'text'", 'the text or truth value "text"'],
    ['true', 'the text or truth value true'],
    ['a = 3', 'an assignment'],
    ['f(x) = x', 'a definition'],
    ['a > 1 ? 2 : 3', 'a choice with a question mark'],
    ['1 < a < 3', 'a comparison'],
    ['a > 1', 'the operator >'],
    ['a and b', 'the operator and'],
    ['not a', 'the operator not'],
    ['a | b', 'the operator |'],
    ['a to cm', 'the operator to'],
    ['3!', 'the operator !'],
    ["a'", "the operator '"],
    ['1; 2', 'a list of statements'],
    ['1\n2', 'a list of statements'],
    ['[1, 2]', 'a list in brackets'],
    ['{a: 1}', 'an object in braces'],
    ['1:3', 'a range with a colon'],
    ['exp(1)', 'the function exp'],
    ['evaluate("1")', 'the function evaluate'],
    ['import(a)', 'the function import'],
    ['toString(1)', 'the function toString'],
    ['constructor(1)', 'the function constructor'],
    ['__proto__(1)', 'the function __proto__'],
    ['a.x(1)', 'the function x'],
    ['a.constructor', 'a.constructor'],
    ['a.x.y', 'a.x.y'],
    ['a.z', 'a.z'],
    ['a["x"]', 'a["x"]'],
    ['a[1]', 'a[1]'],
    ['sqrt(1, 2)', 'sqrt with 2 arguments'],
    ['min(1)', 'min with 1 arguments'],
    ['abs()', 'abs with 0 arguments'],
    ['2^0.5', 'the power in'],
    ['2^a', 'the power in'],
    ['1e400', 'the number 1e400'],
    ['1e400 waist', 'the number 1e400'],
    ['Infinity', 'the number Infinity'],
    ['NaN', 'the number NaN'],
    ['', 'nothing'],
    ['# only a comment', 'nothing'],
    ['null', 'nothing'],
  ])('%j', (text, what) => {
    expectRefusal(() => formula(text), 'formula-not-allowed', PLACE, what, 'Allowed:', text);
  });

  it.each(['1 +', '(1', '1)', '2 ** 3', '1,5', '1 1/2', '?', 'a..x', '=', '\u0000'])(
    '%j cannot be read',
    (text) => {
      expectRefusal(() => formula(text), 'formula-malformed', PLACE, 'cannot be read', text);
    },
  );
});
