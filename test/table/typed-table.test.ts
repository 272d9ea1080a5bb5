import type { Statements } from '../../src/table/statements';
import { describe, expect, it } from 'vitest';
import { agreedUnit, statedBy, statedDown } from '../../src/table/statements';
import { readTypedTable } from '../../src/table/typed-table';
import { readPattern } from '../../src/given/read-pattern';
import { readSeams } from '../../src/seams/read-seams';
import { FRONT_AND_BACK } from '../given/sheets';
import { expectRefusal } from '../expect-refusal';

const file = 'table.csv';
const read = (text: string) =>
  readTypedTable<'edge' | 'ease' | 'note'>(text, file, ['edge', 'ease'], ['note']);

const statedUnit = (statements: Statements) => agreedUnit(statements, []);

describe('a typed table', () => {
  it.each([
    ['commas', '# unit: cm\nedge,ease\ncap,"1,5"\n'],
    ['semicolons and two columns', '# unit: cm\nedge;ease\ncap;1,5\n'],
    ['tabs', '# unit: cm\nedge\tease\ncap\t1,5\n'],
    ['titles with marks, the unit among them', 'Caps, backs; ease\nunit;cm\nEase;Edge\n1,5;cap\n'],
    ['a unit behind a column', 'Note,Edge,Ease (cm)\n,cap,"1,5"\n'],
    [
      'an announced delimiter, CRLF and trailing cells',
      'sep=;\r\n# unit: cm;;\r\nedge;ease;\r\ncap;1,5;\r\n',
    ],
  ])('is read with %s', (_, text) => {
    const table = read(text);
    expect(agreedUnit(table, table.units.values())).toBe('cm');
    expect(table.rows.map((row) => [row('edge').text, row('ease').text, row('note').text])).toEqual(
      [['cap', '1,5', '']],
    );
  });

  it('tells each cell by its place in the file', () => {
    const [row] = read('Caps\n\n# why\nease,edge\n\n1,cap\n').rows;
    expect(row?.('edge').place).toEqual({ file, row: 6, column: 2 });
    expect(row?.(1)).toEqual({ text: '1', place: { file, row: 6, column: 1 } });
    expect(row?.('note')).toEqual({ text: '', place: { file, row: 6 } });
  });

  it('is refused where a cell or a column would be passed over', () => {
    expectRefusal(() => read('edge,ease\ncap,1,5\n'), 'column-unknown', {
      file,
      row: 2,
      column: 3,
    });
    expectRefusal(() => read('edge,ease,\ncap,1,x\n'), 'column-unknown', {
      file,
      row: 2,
      column: 3,
    });
    expectRefusal(() => read('edge,ease,eas\n'), 'column-unknown', { file, row: 1, column: 3 });
    expectRefusal(() => read('edge,ease,Ease\n'), 'column-unknown', { file, row: 1, column: 3 });
    expectRefusal(() => read('edge,note\n'), 'column-missing', { file, row: 1 });
    expectRefusal(() => read(''), 'column-missing', { file, row: 1 });
  });
});

describe('what a file states', () => {
  it('may stand above the header without a mark', () => {
    const table = read('Unit: inches\nbase,12\nedge,ease\n');
    expect(statedUnit(table)).toBe('in');
    expect(statedBy(table, 'base')).toMatchObject({ text: '12', place: { file, row: 2 } });
    expect(statedDown(table)).toBe(1);
    expect(statedDown(read('# Y = UP\nedge,ease\n'))).toBe(-1);
  });

  it('is refused where it disagrees', () => {
    const twice = read('# base: 12\n# base: 14\nedge,ease\n');
    expectRefusal(() => statedBy(twice, 'base'), 'sheet-malformed', { file, row: 2 });
    expect(statedBy(read('# base: 12\n# base: 12\nedge,ease\n'), 'base')?.text).toBe('12');
    const units = read('# unit: cm\nedge,ease_in\n');
    expectRefusal(() => agreedUnit(units, units.units.values()), 'unit-contradicted', { file });
    expectRefusal(() => statedUnit(read('unit,ell\nedge,ease\n')), 'unit-unknown', {
      file,
      row: 1,
    });
  });

  it('goes for patterns and seams alike', () => {
    const pattern = readPattern(FRONT_AND_BACK.replace('# unit: in', 'unit,inches'), 'base.csv');
    expect(pattern.unit).toBe('in');
    const {
      pairs: [seam],
    } = readSeams(
      'Our seams\nunit;cm\nsewn_to;edge;ease\nback.side;front.side;1,5\n',
      file,
      pattern,
    );
    expect(seam?.ease).toBeCloseTo(15, 9);
    expect(readSeams('edge;sewn_to\nfront.side;back.side\n', file, pattern).pairs).toHaveLength(1);
  });
});
