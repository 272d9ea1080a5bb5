import { describe, expect, it } from 'vitest';
import { SHEETS, readPaper } from '../../src/print/paper';
import { readPrintOptions } from '../../src/print/print-options';
import { expectRefusal } from '../expect-refusal';

describe('papers', () => {
  const sizes = new Map(SHEETS.map(({ name, width, height }) => [name, [width, height]]));

  it('halve into each other as ISO 216 says', () => {
    expect(sizes.get('a0')).toEqual([841, 1189]);
    for (let n = 1; n <= 4; n++) {
      const [width = 0, height = 0] = sizes.get(`a${n - 1}`) ?? [];
      expect(sizes.get(`a${n}`)).toEqual([Math.floor(height / 2), width]);
    }
  });

  it('are those of ANSI/ASME Y14.1 in inches', () => {
    expect(sizes.get('letter')?.map((mm) => mm / 25.4)).toEqual([8.5, 11]);
    expect(sizes.get('tabloid')?.map((mm) => mm / 25.4)).toEqual([11, 17]);
  });

  it('are named in any case, rolls by their width', () => {
    expect(readPaper(' A4 ')).toMatchObject({ kind: 'sheet', width: 210 });
    expect(readPaper('roll=36in')).toMatchObject({ kind: 'roll', width: 914.4 });
    expect(readPaper('roll = 90 cm')).toMatchObject({ kind: 'roll', width: 900 });
    expect(readPaper('projector')).toMatchObject({ kind: 'projector' });
  });

  it.each(['a9', '', 'roll', 'roll=', 'roll=wide', 'roll=0', 'roll=-3in', 'roll=9m', 'legal pad'])(
    'refuses %j',
    (name) => {
      expectRefusal(() => readPaper(name), 'paper-unknown', { field: 'paper' });
    },
  );
});

describe('print options', () => {
  it('are 10 mm of margin and an overlap where nothing is said', () => {
    expect(readPrintOptions({ paper: ['a4'] })).toMatchObject({ margin: 10, join: 'overlap' });
  });

  it.each([
    ['a4', '22mm', true],
    ['a4', '23mm', false],
    ['letter', '20mm', true],
    ['letter', '7/8in', false],
    ['a4', '-1mm', false],
    ['a4', 'narrow', false],
    ['a4', '0', true],
  ])('on %s the margin %s is usable: %s', (paper, margin, usable) => {
    const read = () => readPrintOptions({ paper: [paper], margin });
    if (usable) expect(read().margin).toBeGreaterThanOrEqual(0);
    else expectRefusal(read, 'bad-option', { field: 'margin' }, margin);
  });

  it('refuse a paper asked for twice', () => {
    expectRefusal(() => readPrintOptions({ paper: ['a4', 'A4'] }), 'bad-option', {
      field: 'paper',
    });
  });
});
