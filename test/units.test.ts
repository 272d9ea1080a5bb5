import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LengthUnit } from '../src/units';
import {
  CENTIMETERS_PER_INCH,
  LENGTH_UNITS,
  POINTS_PER_INCH,
  POINTS_PER_MILLIMETER,
  fromMillimeters,
  inchFraction,
  showLength,
  showNumber,
  tableLength,
  tableNumber,
  toMillimeters,
  trimmed,
  yardsToMillimeters,
} from '../src/units';

const length = fc.double({ min: -5000, max: 5000, noNaN: true });
const unit = fc.constantFrom(...LENGTH_UNITS);

describe('inches to millimeters', () => {
  // The inch is 25.4 mm exactly (international yard and pound agreement, 1959), so n/32 in is
  // n * 79375 / 100000 mm: whole numbers divided once give the double nearest to the true value.
  it.each([8, 16, 32])('is the nearest double for every %ith up to 100 in', (denominator) => {
    for (let count = -100 * denominator; count <= 100 * denominator; count++) {
      const hundredThousandths = count * (32 / denominator) * 79375;
      expect(toMillimeters(count / denominator, 'in')).toBe(hundredThousandths / 100000);
    }
  });

  it('takes the decimals people type to the millimeters they mean', () => {
    expect(toMillimeters(26.5, 'in')).toBe(673.1);
    expect(toMillimeters(1 / 16, 'in')).toBe(1.5875);
    expect(toMillimeters(67.5, 'cm')).toBe(675);
    expect(toMillimeters(675, 'mm')).toBe(675);
  });

  it('goes there and back within the last digits', () => {
    fc.assert(
      fc.property(length, unit, (value, from) => {
        const back = fromMillimeters(toMillimeters(value, from), from);
        expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * Math.abs(value));
      }),
    );
  });

  it('goes there and back exactly for every sixty-fourth of an inch', () => {
    for (let count = 0; count <= 100 * 64; count++)
      expect(fromMillimeters(toMillimeters(count / 64, 'in'), 'in')).toBe(count / 64);
  });
});

describe('inchFraction', () => {
  it.each([
    [0, '0'],
    [-0, '0'],
    [0.5, '1/2'],
    [26.5, '26 1/2'],
    [-7 / 16, '-7/16'],
    [-26.75, '-26 3/4'],
    [3, '3'],
    [-3, '-3'],
    [1 / 64, '1/64'],
    [63 / 64, '63/64'],
    [2 + 10 / 16, '2 5/8'],
    [0.1, '0.1'],
    [1 / 128, '0.008'],
    [1 / 3, '0.333'],
    [-1 / 3, '-0.333'],
    [0.0001, '0'],
    // A thousandth off a half is no half: only what rounds to it in a table of three decimals is.
    [0.501, '0.501'],
    [0.5004, '1/2'],
    [-0.0001, '0'],
    [6.9996, '7'],
  ])('writes %d in as %s', (inches, text) => {
    expect(inchFraction(inches * 25.4)).toBe(text);
  });

  it('writes every sixteenth so that it reads back as itself', () => {
    for (let count = 0; count < 16 * 40; count++) {
      const [whole, over = '0', under = '1'] = /^(?:\d+\/\d+)$/.test(
        inchFraction((count * 25.4) / 16),
      )
        ? ['0', ...inchFraction((count * 25.4) / 16).split('/')]
        : inchFraction((count * 25.4) / 16).split(/[ /]/);
      expect(Number(whole) * 16 + (Number(over) * 16) / Number(under)).toBe(count);
    }
  });

  it('takes another denominator', () => {
    expect(inchFraction(25.4 / 16, 8)).toBe('0.063');
    expect(inchFraction(25.4 / 8, 8)).toBe('1/8');
  });
});

describe('numbers as text', () => {
  it.each([
    [1.5, 3, '1.5'],
    [100, 0, '100'],
    [100, 2, '100'],
    [-0.0004, 3, '0'],
    [0.0005, 4, '0.0005'],
    [-2.5, 1, '-2.5'],
    [1234.5678, 2, '1234.57'],
  ])('trims %d to %i decimals', (value, decimals, text) => {
    expect(trimmed(value, decimals)).toBe(text);
  });

  it.each<[LengthUnit, string]>([
    ['in', '26.5'],
    ['cm', '67.31'],
    ['mm', '673.1'],
  ])('writes tables in %s', (into, text) => {
    expect(tableNumber(673.1, into)).toBe(text);
  });

  it('loses less than a thousandth of a millimeter in a table', () => {
    fc.assert(
      fc.property(length, unit, (mm, into) => {
        const written = Number(tableNumber(mm, into));
        const perUnit = { in: 25.4, cm: 10, mm: 1 }[into];
        expect(Math.abs(written * perUnit - mm)).toBeLessThan(0.001);
      }),
    );
  });

  it('shows lengths with their unit, inches as fractions where asked', () => {
    expect(showLength(673.1, { unit: 'in', fractions: true })).toBe('26 1/2 in');
    expect(showLength(673.1, { unit: 'in', fractions: false })).toBe('26.5 in');
    expect(showLength(673.1, { unit: 'cm', fractions: true })).toBe('67.31 cm');
    expect(showNumber(673.14, { unit: 'mm', fractions: false })).toBe('673.1');
  });

  it('writes a fraction in a table only where nothing is lost', () => {
    const display = { unit: 'in', fractions: true, fractionTables: true } as const;
    expect(tableLength(26.5 * 25.4, display)).toBe('26 1/2');
    expect(tableLength(0.3 * 25.4, display)).toBe('0.3');
    expect(tableLength(26.5003 * 25.4, display)).toBe('26.5003');
    expect(tableLength(26.5 * 25.4, { unit: 'in', fractions: false })).toBe('26.5');
    expect(tableLength(26.5 * 25.4, { unit: 'cm', fractions: true })).toBe('67.31');
  });
});

describe('other units', () => {
  it('are those that are defined', () => {
    // The yard is 0.9144 m exactly, the inch 25.4 mm (NIST Special Publication 811, appendix B).
    expect(yardsToMillimeters(1)).toBe(914.4);
    expect(yardsToMillimeters(1)).toBe(toMillimeters(36, 'in'));
    expect(yardsToMillimeters(2.5)).toBeCloseTo(2286, 9);
    expect(CENTIMETERS_PER_INCH).toBe(2.54);
    // The unit of a page is 1/72 in (ISO 32000-1 clause 8.3.2.3): A4 is 595.276 by 841.890 points.
    expect(210 * POINTS_PER_MILLIMETER).toBeCloseTo(595.276, 3);
    expect(297 * POINTS_PER_MILLIMETER).toBeCloseTo(841.89, 3);
    expect(11 * POINTS_PER_INCH).toBe(792);
  });
});
