import { describe, expect, it } from 'vitest';
import { expectRefusal } from '../expect-refusal';
import { statedBy, statedDown, statedUnit, statementsOf } from '../../src/table/statements';

const stating = (text: string) => statementsOf('sheet.csv', [{ row: 1, text }], []);

describe('a statement in other words', () => {
  it.each([
    'units: cm',
    'Units = cm',
    'unit cm',
    'unit (cm)',
    'measurements in cm',
    'cm',
    'All lengths are in centimeters.',
  ])('"%s" states the unit', (text) => {
    expect(statedUnit(stating(text))).toBe('cm');
  });

  it.each(['y up', 'y-axis: up', 'Y axis: up', 'y runs up'])('"%s" turns y', (text) => {
    expect(statedDown(stating(text))).toBe(-1);
  });

  it.each(['base size: 10', 'sample size: 10'])('"%s" states the base', (text) => {
    expect(statedBy(stating(text), 'base')?.text).toBe('10');
  });

  it('leaves prose alone', () => {
    expect(statedUnit(stating('units of the old sheet'))).toBeUndefined();
    expect(statedUnit(stating('unit prices'))).toBeUndefined();
    expect(statedUnit(stating('hip taken at 8 in'))).toBeUndefined();
    expect(statedDown(stating('y up to the waist'))).toBe(1);
  });

  it('says the same unit in two words once, and two units not at all', () => {
    const both = (...lines: readonly string[]) =>
      statementsOf(
        'sheet.csv',
        lines.map((text, i) => ({ row: i + 1, text })),
        [],
      );
    expect(statedUnit(both('unit: cm', 'all in centimeters'))).toBe('cm');
    expectRefusal(() => statedUnit(both('unit: cm', 'all in mm')), 'sheet-malformed', {
      ...{ file: 'sheet.csv', row: 2 },
    });
  });
});
