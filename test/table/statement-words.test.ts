import { saidLine } from '../../src/table/said-line';
import type { Statements } from '../../src/table/statements';
import { describe, expect, it } from 'vitest';
import { expectRefusal } from '../expect-refusal';
import { statedBy, statedDown, agreedUnit, statementsOf } from '../../src/table/statements';

const said = (text: string, i = 0) => saidLine(text, { file: 'sheet.csv', row: i + 1 });
const stating = (text: string) => statementsOf('sheet.csv', [said(text)], []);

const statedUnit = (statements: Statements) => agreedUnit(statements, []);

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
    const both = (...lines: readonly string[]) => statementsOf('sheet.csv', lines.map(said), []);
    expect(statedUnit(both('unit: cm', 'all in centimeters'))).toBe('cm');
    expectRefusal(() => statedUnit(both('unit: cm', 'all in mm')), 'unit-contradicted', {
      ...{ file: 'sheet.csv', row: 2 },
    });
  });

  it.each([
    ['unit cm, y up', 'cm', -1, undefined],
    ['unit: cm; y: up', 'cm', -1, undefined],
    ['unit: cm; base: 10', 'cm', 1, '10'],
    ['base size 10 and all lengths in cm', 'cm', 1, '10'],
    ['cm, y runs up. base 10', 'cm', -1, '10'],
    ['Quill skirt (all lengths in mm, y up)', 'mm', -1, undefined],
    ['unit,cm', 'cm', 1, undefined],
    ['base,10,y,up', undefined, -1, '10'],
    ['unit of measure: cm', 'cm', 1, undefined],
    ['unit is inches', 'in', 1, undefined],
    ['up is positive', undefined, -1, undefined],
    ['y axis upward', undefined, -1, undefined],
    ['+y is up!', undefined, -1, undefined],
    ['direction of y: up', undefined, -1, undefined],
  ] as const)('"%s" is read whole', (text, unit, down, base) => {
    const sheet = stating(text);
    expect(statedUnit(sheet)).toBe(unit);
    expect(statedDown(sheet)).toBe(down);
    expect(statedBy(sheet, 'base')?.text).toBe(base);
  });

  it.each([
    ['sizes 8, 10 and 12', 'sizes', '8, 10 and 12'],
    ['sizes,8,10,12', 'sizes', '8,10,12'],
    ['title,Quill skirt', 'title', 'Quill skirt'],
    ['title: Salt and pepper, a skirt', 'title', 'Salt and pepper, a skirt'],
    ['based on shared-pencil', 'based on', 'shared-pencil'],
    ['style: shared-pencil', 'based on', 'shared-pencil'],
    ['blanks are zero', 'blank', 'zero'],
    ['seam allowances 5/8 in', 'allowance', '5/8 in'],
    ['allowance: 5/8 in, hem 2 in', 'allowance', '5/8 in, hem 2 in'],
    ['zero at side_hip', 'zero', 'side_hip'],
  ] as const)('"%s" states the %s', (text, name, stated) => {
    expect(statedBy(stating(text), name)?.text).toBe(stated);
  });

  it.each(['measured in the shop, cm throughout', 'lengths: inches', 'unit cm y up', 'metric'])(
    'refuses "%s", which seems to state a unit',
    (text) => {
      expectRefusal(
        () => statedUnit(stating(text)),
        'sheet-malformed',
        { file: 'sheet.csv', row: 1 },
        '# unit: cm',
      );
    },
  );

  it('refuses an upward y in words that are not known, and leaves a way up in prose alone', () => {
    for (const text of ['y is counted from the hem up', 'up = positive y'])
      expectRefusal(() => statedDown(stating(text)), 'sheet-malformed', {
        ...{ file: 'sheet.csv', row: 1 },
      });
    expect(statedDown(stating('the way up'))).toBe(1);
  });

  it('finds a statement in any cell of a title line', () => {
    const titled = (...cells: readonly string[]) =>
      statementsOf('sheet.csv', [], [{ row: 1, cells }]);
    expect(statedUnit(titled('Sorrel rules', '', 'cm'))).toBe('cm');
    expect(statedDown(titled('Sorrel rules', 'y up'))).toBe(-1);
    expect(statedBy(titled('Base size', '12'), 'base')?.text).toBe('12');
    expectRefusal(() => statedUnit(titled('unit', 'ell')), 'unit-unknown', {
      ...{ file: 'sheet.csv', row: 1 },
    });
  });

  it('reads a line of many parts in no time', () => {
    const long = 'y, '.repeat(60_000);
    expect(statedDown(stating(`unit: ${long}`))).toBe(1);
  });
});
