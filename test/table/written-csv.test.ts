import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withoutTextMark } from '../../src/table/written-cell';
import { writtenCsv } from '../../src/table/written-csv';

/** What a reader that trims cells outside quotes, as ours does, makes of the text. */
function readBack(csv: string): readonly string[][] {
  return parse(csv, { trim: true, skip_empty_lines: false, relax_column_count: true });
}

const cell = fc.oneof(
  fc.string({ unit: fc.constantFrom('a', '1', '-', '.', ',', '"', '\n', ' ', '=', "'", ';', '@') }),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value.toFixed(3)),
);

describe('writtenCsv', () => {
  it('quotes what has a comma, a quote, a line break or a blank at an end, and nothing else', () => {
    expect(
      writtenCsv([
        ['a', 'a b', '1/2', '-3.5', undefined],
        ['a,b', '5" wide', 'two\nlines', ' a', 'a '],
      ]),
    ).toBe('a,a b,1/2,-3.5,\n"a,b","5"" wide","two\nlines"," a","a "\n');
  });

  it('is read back as it was by another library', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1 }),
        (rows) => {
          const read = readBack(writtenCsv(rows)).map((row) => row.map(withoutTextMark));
          expect(read).toEqual(rows);
        },
      ),
    );
  });
});
