import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLength, parseNumberCell } from '../../src/table/number-cell';
import { toMillimeters } from '../../src/units';

describe('a cell as people type it', () => {
  it.each([
    ['26.5', 26.5],
    ['26,5', 26.5],
    ['26', 26],
    ['.5', 0.5],
    [',5', 0.5],
    ['0', 0],
    ['-0', 0],
    ['26 1/2', 26.5],
    ['26-1/2', 26.5],
    ['26\u20131/2', 26.5],
    ['26½', 26.5],
    ['26 ½', 26.5],
    ['26-½', 26.5],
    ['½', 0.5],
    ['1/2', 0.5],
    ['26 1 / 2', 26.5],
    ['26 1\u20442', 26.5],
    ['26\u00A01/2', 26.5],
    ['\u2009 26\u2009\u2009½\u202F', 26.5],
    ['\u200B26½', 26.5],
    ['7¼', 7.25],
    ['7¾', 7.75],
    ['7⅛', 7.125],
    ['7⅜', 7.375],
    ['7⅝', 7.625],
    ['7⅞', 7.875],
    ['7⅓', 22 / 3],
    ['7⅔', 23 / 3],
    ['26 15/16', 26.9375],
    ['26 8/16', 26.5],
    ['-3', -3],
    ['\u22123', -3],
    ['-26 1/2', -26.5],
    ['-½', -0.5],
  ])('%j is %d', (text, value) => {
    expect(parseNumberCell(text)).toEqual({ kind: 'number', value });
  });

  it.each([
    ['26 1/2"', 26.5, 'in'],
    ['26 1/2 in', 26.5, 'in'],
    ['26 1/2in.', 26.5, 'in'],
    ['26½″', 26.5, 'in'],
    ['26½”', 26.5, 'in'],
    ["26½''", 26.5, 'in'],
    ['26.5 Inches', 26.5, 'in'],
    ['1 inch', 1, 'in'],
    ['67.5 cm', 67.5, 'cm'],
    ['67,5cm', 67.5, 'cm'],
    ['67.5 Centimetres', 67.5, 'cm'],
    ['675 mm', 675, 'mm'],
    ['675 millimeters', 675, 'mm'],
  ])('%j is %d %s', (text, value, unit) => {
    expect(parseNumberCell(text)).toEqual({ kind: 'number', value, unit });
  });

  it.each(['', ' ', '\u00A0', '\t', '\u200B'])('%j is blank', (text) => {
    expect(parseNumberCell(text)).toEqual({ kind: 'blank' });
  });

  it.each([
    ...['abc', '1e3', '=26', '+26', '26 3/0', '0/0', '26 5/2', '53/2', '26 2/2', '1.5 1/2'],
    ...['26.', '1.016,5', '1,016,5', '1.2.3', '26 27', '26-27', '26½½', '1/2/3', '--3', '- -3'],
    ...[
      '26 m',
      '26 lb',
      '26 cm cm',
      'cm',
      '"',
      '-',
      '—',
      'n/a',
      '#REF!',
      'Infinity',
      'NaN',
      '0x1A',
    ],
    ...['9999999999', '26 1/2 3', '1 016', '½26', '26°'],
    ...['26 - 1/2', '26 -1/2', '26- 1/2', '26 - ½', '26 -½', '26 - 1/2 in'],
  ])('%j is not a number', (text) => {
    expect(parseNumberCell(text)).toEqual({ kind: 'not-a-number' });
  });
});

describe('parseLength', () => {
  it.each([
    ['1/16in', 1.5875],
    ['0.5mm', 0.5],
    ['0,5', 5],
    ['2', 20],
    ['-1/8 in', -3.175],
  ])('%j in centimeters is %d mm', (text, mm) => {
    expect(parseLength(text, 'cm')).toBe(mm);
  });

  it.each(['', 'abc', '1/0', '5 ft'])('%j is no length', (text) => {
    expect(parseLength(text, 'cm')).toBeUndefined();
  });
});

describe('sixteenths of an inch', () => {
  const SIGNS: Readonly<Record<number, string>> = {
    ...{ 2: '⅛', 4: '¼', 6: '⅜', 8: '½', 10: '⅝', 12: '¾', 14: '⅞' },
  };

  it('are the same double in every notation', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1600 }), (k) => {
        const mm = toMillimeters(k / 16, 'in');
        const whole = Math.floor(k / 16);
        const rest = k % 16;
        const decimal = String(k / 16);
        const typed = [decimal, decimal.replace('.', ','), `${whole} ${rest}/16`];
        if (rest !== 0) typed.push(`${whole}-${rest}/16`, `${whole}\u00A0${rest}\u204416`);
        const sign = SIGNS[rest];
        if (sign !== undefined) typed.push(`${whole}${sign}`, `${whole} ${sign}`);
        if (whole === 0) typed.push(`${rest}/16`);
        for (const text of typed) {
          expect(parseLength(text, 'in')).toBe(mm);
          for (const mark of ['"', ' in', ' in.', '″', 'inch', "''"]) {
            expect(parseLength(`${text}${mark}`, 'cm')).toBe(mm);
          }
        }
      }),
    );
  });

  it('never throws, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const cell = parseNumberCell(text);
        if (cell.kind === 'number') expect(Number.isFinite(cell.value)).toBe(true);
      }),
    );
  });
});
