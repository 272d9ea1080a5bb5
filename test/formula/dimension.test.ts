import { describe, expect, it } from 'vitest';
import { checkDimension } from '../../src/formula/dimension';
import { expectRefusal } from '../expect-refusal';
import { PLACE, formula } from './formulas';

// `share` is a plain number, every other name a length.
const dimensionOf = (name: string): number => (name === 'share' ? 0 : 1);

function check(text: string, expected: 0 | 1): void {
  checkDimension(formula(text), expected, dimensionOf);
}

describe('dimensions', () => {
  it.each([
    'waist_girth/4 + 1 in',
    'share * hip_girth',
    'hip_girth * waist_girth / (hip_girth + 1 cm)',
    'sqrt(hip_girth^2 + waist_girth^2)',
    'max(hip_girth, waist_girth, 0)',
    'abs(-hip_girth)',
    'hip_girth - 0',
    '0',
    '0 * 3',
    'hip_girth * sin(hip_girth/waist_girth)',
    '2/3 * side_hip.y',
  ])('%s is a length', (text) => {
    expect(() => {
      check(text, 1);
    }).not.toThrow();
  });

  it.each(['0.5', 'hip_girth / waist_girth', 'share^2', 'atan(1/2)', '0', '1 in / 1 cm'])(
    '%s is a plain number',
    (text) => {
      expect(() => {
        check(text, 0);
      }).not.toThrow();
    },
  );

  it.each([
    ['waist_girth + 2', 'mixes a length with a plain number'],
    ['waist_to_knee - 2', 'mixes a length with a plain number'],
    ['waist_girth + share', 'mixes a length with a plain number'],
    ['max(waist_girth, 3)', 'mixes a length with a plain number'],
    ['hip_girth + hip_girth^2', 'mixes a length with a plain number'],
    ['sin(hip_girth)', 'takes a plain number'],
    ['4', 'must give a length'],
    ['hip_girth * waist_girth', 'must give a length'],
    ['hip_girth/2 in', 'must give a length'],
    ['1/hip_girth', 'must give a length'],
    ['sqrt(hip_girth)', 'must give a length'],
  ])('%s is no length', (text, what) => {
    expectRefusal(
      () => {
        check(text, 1);
      },
      'formula-dimension',
      PLACE,
      what,
      text,
    );
  });

  it('a length is no plain number', () => {
    expectRefusal(
      () => {
        check('1 in', 0);
      },
      'formula-dimension',
      PLACE,
      'must give a plain number',
    );
  });
});
