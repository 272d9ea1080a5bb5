/** How a shop says an allowance or a zip, against tables typed by hand: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { shopLength, shopZip } from '../../src/pattern/shop-length';
import { toMillimeters } from '../../src/units';

const INCH = { unit: 'in' } as const;
const METRIC = { unit: 'cm' } as const;

describe('an allowance', () => {
  // As the backs of pattern envelopes have it: 5/8 in is 1.5 cm, and 2 in is 5 cm.
  it.each([
    [1 / 8, '1/8 in (0.3 cm)'],
    [1 / 4, '1/4 in (0.6 cm)'],
    [3 / 8, '3/8 in (1 cm)'],
    [1 / 2, '1/2 in (1.3 cm)'],
    [5 / 8, '5/8 in (1.5 cm)'],
    [3 / 4, '3/4 in (2 cm)'],
    [1, '1 in (2.5 cm)'],
    [5 / 4, '1 1/4 in (3 cm)'],
    [3 / 2, '1 1/2 in (4 cm)'],
    [2, '2 in (5 cm)'],
    [5 / 2, '2 1/2 in (6.5 cm)'],
    [7 / 16, '7/16 in (1.1 cm)'],
    [0, '0 in (0 cm)'],
  ])('of %f in is %s', (inches, words) => {
    expect(shopLength(toMillimeters(inches, 'in'), INCH)).toBe(words);
  });

  it.each([
    [3, '0.3 cm (1/8 in)'],
    [6, '0.6 cm (1/4 in)'],
    [7.5, '0.75 cm (5/16 in)'],
    [10, '1 cm (3/8 in)'],
    [12, '1.2 cm (1/2 in)'],
    [15, '1.5 cm (5/8 in)'],
    [20, '2 cm (3/4 in)'],
    [25, '2.5 cm (1 in)'],
    [30, '3 cm (1 1/4 in)'],
    [40, '4 cm (1 1/2 in)'],
    [50, '5 cm (2 in)'],
    [60, '6 cm (2 1/4 in)'],
  ])('of %d mm is %s', (mm, words) => {
    expect(shopLength(mm, METRIC)).toBe(words);
    expect(shopLength(mm, { unit: 'mm' })).toBe(words.replace(/^[\d.]+ cm/u, `${mm} mm`));
  });

  it('of a chart in the other unit is round in the unit that is shown', () => {
    expect(shopLength(20, INCH)).toBe('3/4 in (2 cm)');
    expect(shopLength(toMillimeters(5 / 8, 'in'), METRIC)).toBe('1.5 cm (5/8 in)');
  });
});

describe('a zip', () => {
  it.each([
    [7, '7 in (18 cm)'],
    [8, '8 in (20 cm)'],
    [9, '9 in (22 cm)'],
    [10, '10 in (26 cm)'],
  ])('of %d in is %s', (inches, words) => {
    expect(shopZip(toMillimeters(inches, 'in'), INCH)).toBe(words);
  });

  it.each([
    [18, '18 cm (7 in)'],
    [20, '20 cm (8 in)'],
    [22, '22 cm (9 in)'],
    [24, '24 cm (10 in)'],
  ])('of %d cm is %s', (cm, words) => {
    expect(shopZip(10 * cm, METRIC)).toBe(words);
  });
});
