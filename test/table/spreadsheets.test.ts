/** What spreadsheet programs save and what they do to cells. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/chart/read-chart';
import { writeChart } from '../../src/chart/write-chart';
import { writtenCsv } from '../../src/table/written-csv';
import { typedForDate } from '../../src/table/date-cell';
import { decodedTable } from '../../src/table/table-text';
import { lengthCell, readTypedTable } from '../../src/table/typed-table';
import { withoutTextMark, writtenCell } from '../../src/table/written-cell';
import { expectRefusal } from '../expect-refusal';

const CHART =
  '# unit: in\nmeasurement,8,10\nwaist_girth,26\u00bd,27\u00bc\nhip_girth,36\u00be,38\n';

describe('a saved table', () => {
  // UTF-16 is ISO/IEC 10646; the marks stand in the Unicode Standard, section 23.8.
  const little = Buffer.from(CHART, 'utf16le');
  const big = Buffer.from(little).swap16();
  // In Windows-1252 the quarters are the bytes BC to BE, as in ISO/IEC 8859-1.
  const latin = Buffer.from(CHART, 'latin1');

  it.each([
    ['UTF-8', Buffer.from(CHART)],
    ['UTF-8 with a mark', Buffer.concat([Buffer.from('efbbbf', 'hex'), Buffer.from(CHART)])],
    ['UTF-16, low byte first', little],
    ['UTF-16, low byte first, with a mark', Buffer.concat([Buffer.from('fffe', 'hex'), little])],
    ['UTF-16, high byte first', big],
    ['UTF-16, high byte first, with a mark', Buffer.concat([Buffer.from('feff', 'hex'), big])],
    ['Windows-1252', latin],
  ])('in %s is read', (_, bytes) => {
    expect(decodedTable(bytes)).toBe(CHART);
    const { rows } = readChart(decodedTable(bytes), 'chart.csv');
    // 26 1/2 and 27 1/4 inches of 25.4 mm (ISO 31).
    expect(rows[0]?.values).toEqual([673.1, 692.15]);
  });

  it('in Windows-1252 has its quotes and its euro', () => {
    // Bytes 80, 93 and 94 of the code page.
    expect(decodedTable(Buffer.from('809394', 'hex'))).toBe('\u20ac\u201c\u201d');
  });

  it.each([
    // The first bytes of a ZIP archive, of a compound file and of a PDF.
    ['504b030414000600080000002100', 'a workbook'],
    ['d0cf11e0a1b11ae1', 'a workbook'],
    ['255044462d312e37', 'a PDF'],
  ])('that begins with %s is refused as %s', (bytes, what) => {
    const rest = Buffer.from('ff00e4807f', 'hex');
    const text = decodedTable(Buffer.concat([Buffer.from(bytes, 'hex'), rest]));
    expectRefusal(() => readChart(text, 'x.csv'), 'csv-malformed', { file: 'x.csv' }, what);
  });

  it('in UTF-8 is read in UTF-8 whatever is in it', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 1 }), (text) => {
        fc.pre(!text.includes('\0') && !text.startsWith('\uFEFF'));
        expect(decodedTable(Buffer.from(text))).toBe(text);
      }),
    );
  });
});

describe('a cell turned into a date', () => {
  it.each([
    ['7-Aug', '7/8 or 8/7'],
    ['07. Aug', '7/8 or 8/7'],
    ['8-Jul', '8/7 or 7/8'],
    ['5-mai', '5/5'],
    ['3-ao\u00fbt', '3/8 or 8/3'],
    ['Jan-32', '1/32'],
    ['2026-08-07', '8/7 or 7/8'],
    ['7/8/2026', '7/8 or 8/7'],
    ['07.08.2026', '7/8 or 8/7'],
  ])('%s is recognized', (text, typed) => {
    expect(typedForDate(text)).toBe(typed);
  });

  it.each(['7/8', '26 1/2', '7-8', 'Set 12', 'M', '10-12', 'Mar', '10-Regular', 'size 10', ''])(
    '%j is none',
    (text) => {
      expect(typedForDate(text)).toBeUndefined();
    },
  );

  it('is named where it stands', () => {
    const chart = CHART.replace('27\u00bc', '7-Aug');
    const place = { file: 'c.csv', row: 3, column: 3, size: '10', measurement: 'waist_girth' };
    const words = 'a date, which spreadsheet programs make of 7/8 or 8/7';
    expectRefusal(() => readChart(chart, 'c.csv'), 'cell-not-a-number', place, words, 'Got: 7-Aug');

    const label = CHART.replace(',8,10', ',6-Aug,10-Dec');
    expectRefusal(
      () => readChart(label, 'c.csv'),
      'cell-is-date',
      { file: 'c.csv', row: 2, column: 2 },
      'make of 6-8 or 8-6',
    );
    const [row] = readTypedTable('a,b\n1,7-Aug\n', 't.csv', ['a', 'b'], []).rows;
    expectRefusal(
      () => row && lengthCell(row('b'), 'in'),
      'cell-not-a-number',
      { file: 't.csv', row: 2, column: 2 },
      words,
    );
  });
});

describe('a text that would be calculated', () => {
  const HOSTILE = ['=HYPERLINK("http://a.b")', '-1+1', '@SUM(A1)', '+1', '=1', "'=1", '-', "''@x"];

  it.each(HOSTILE)('%s is written as text and reads back', (text) => {
    // RFC 4180: quotes around a cell with quotes in it, which are doubled.
    const line = writtenCsv([[text]]).trimEnd();
    const cell = line.startsWith('"') ? line.slice(1, -1).replaceAll('""', '"') : line;
    expect(cell).toBe(`'${text}`);
    expect(withoutTextMark(cell)).toBe(text);
  });

  it.each(['-3.5', '-7/16', '-1 1/4', '8', "8'", "'8", "o'clock", '', 'a=b', '\u00bd'])(
    '%j stays as it is',
    (text) => {
      expect(writtenCell(text)).toBe(text);
      expect(withoutTextMark(text)).toBe(text);
    },
  );

  it('reads back whatever it is', () => {
    const hostile = fc.string({ unit: fc.constantFrom(...`'=+-@1a/ `) });
    fc.assert(
      fc.property(fc.oneof(hostile, fc.string()), (text) => {
        fc.pre(text !== '');
        const cell = writtenCell(text);
        // By hand: what begins with a sign is a plain number, or is marked.
        if (/^[=+@]/.test(cell)) throw new Error(cell);
        if (cell.startsWith('-')) expect(cell).toMatch(/^- ?[\d.,\u00bc-\u00be\u2150-\u215e]/);
        fc.pre(!/^'+[=+\-@]/.test(text) || cell !== text);
        expect(withoutTextMark(cell)).toBe(text);
      }),
    );
  });

  it('is a size in a chart that goes round', () => {
    const chart = readChart(CHART.replace(',8,10', ',=A1,@SUM(A1)'), 'c.csv');
    expect(chart.sizes).toEqual(['=A1', '@SUM(A1)']);
    const text = writeChart(chart);
    expect(text).toContain("measurement,'=A1,'@SUM(A1)\n");
    expect(readChart(text, 'c.csv').sizes).toEqual(chart.sizes);
  });
});

describe('a column of units', () => {
  const plain = readChart('# unit: in\nmeasurement,6,8\nwaist_girth,24,25\nhip_girth,34,35\n', 'c');

  it.each([
    ['measurement,unit,6,8\nwaist_girth,in,24,25\nhip_girth,in,34,35\n'],
    ['measurement,Units,6,8\nwaist,inches,24,25\nhip,"""",34,35\nweight,kg,60,62\n'],
    ['measurement,6,8,unit\nwaist_girth,24,25,in\nhip_girth,34,35,\n'],
    ['size,unit,waist_girth,hip_girth\n6,in,24,34\n8,in,25,35\n'],
  ])('states the unit: %j', (text) => {
    const { unit, sizes, rows } = readChart(text, 'c');
    expect({ unit, sizes }).toEqual({ unit: 'in', sizes: ['6', '8'] });
    expect(rows.slice(0, 2).map(({ values }) => values)).toEqual(
      plain.rows.map(({ values }) => values),
    );
  });

  it('must not disagree with itself or with the file', () => {
    const mixed = 'measurement,unit,6,8\nwaist_girth,in,24,25\nhip_girth,cm,86,88\n';
    expectRefusal(() => readChart(mixed, 'c'), 'unit-contradicted', {
      file: 'c',
      row: 3,
      column: 2,
    });
    const odd = 'measurement,unit,6,8\nwaist_girth,ell,24,25\nhip_girth,in,34,35\n';
    expectRefusal(() => readChart(odd, 'c'), 'unit-unknown', { file: 'c', row: 2, column: 2 });
  });
});
