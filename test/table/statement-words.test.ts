import { describe, expect, it } from 'vitest';
import { statedBy, statedDown, statedUnit, statementsOf } from '../../src/table/statements';

const stating = (text: string) => statementsOf('sheet.csv', [{ row: 1, text }], []);

describe('a statement in other words', () => {
  it.each(['units: cm', 'Units = cm', 'unit cm', 'unit (cm)', 'measurements in cm'])(
    '"%s" states the unit',
    (text) => {
      expect(statedUnit(stating(text))).toBe('cm');
    },
  );

  it.each(['y up', 'y-axis: up', 'Y axis: up', 'y runs up'])('"%s" turns y', (text) => {
    expect(statedDown(stating(text))).toBe(-1);
  });

  it.each(['base size: 10', 'sample size: 10'])('"%s" states the base', (text) => {
    expect(statedBy(stating(text), 'base')?.text).toBe('10');
  });

  it('leaves prose alone', () => {
    expect(statedUnit(stating('units of the old sheet'))).toBeUndefined();
    expect(statedUnit(stating('unit prices'))).toBeUndefined();
  });
});
