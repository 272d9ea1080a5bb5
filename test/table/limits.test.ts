/** Files, cells and formulas beyond what any skirt needs are refused before anything is made of them. */
import { describe, expect, it } from 'vitest';
import { readChart } from '../../src/chart/read-chart';
import { readRuleTable } from '../../src/dxf/rule-table';
import { rawEntities } from '../../src/dxf/tags';
import { readPattern } from '../../src/given/read-pattern';
import { parseFormula } from '../../src/formula/parse';
import { printable, terminalText } from '../../src/table/characters';
import { expectRefusal } from '../expect-refusal';
import { FRONT, graded } from '../given/sheets';

const chart = (label: string): string =>
  `# unit: in\nmeasurement,8,${label}\nwaist_girth,25,26\nhip_girth,35,36\n`;
const refused = (text: string, row: number, ...words: readonly string[]): void => {
  expectRefusal(() => readChart(text, 'c.csv'), 'file-too-large', { file: 'c.csv', row }, ...words);
};

describe('a table', () => {
  it('of too many cells, lines or characters is refused', () => {
    refused(','.repeat(9_900_000), 1, 'a line has too many characters', '200000');
    refused('\n'.repeat(9_900_000), 250_001, 'too many lines', '250000');
    const wide = `waist_girth${',25'.repeat(9_999)}\n`;
    refused(wide.repeat(11), 11, 'too many cells', '100000');
    // Rows of nothing hold no cells.
    expect(readChart(`${chart('10')}${',,,,,,,,,\n'.repeat(20_000)}`, 'c.csv').sizes).toHaveLength(
      2,
    );
  });

  it('of too many sizes is refused, and one of as many as may be is read', () => {
    const sized = (count: number): string =>
      `# unit: in\nsize,waist_girth,hip_girth\n${Array.from(
        { length: count },
        (_, i) => `s${i},${25 + i / 100},${35 + i / 100}\n`,
      ).join('')}`;
    expect(readChart(sized(100), 'c.csv').sizes).toHaveLength(100);
    refused(sized(101), 2, 'too many sizes', '100 sizes');
  });

  it('with a long label is refused where it stands', () => {
    const place = { file: 'c.csv', row: 2, column: 3 };
    for (const length of [101, 2_000, 5_000]) {
      expectRefusal(() => readChart(chart('x'.repeat(length)), 'c.csv'), 'file-too-large', place);
    }
    expect(readChart(chart('x'.repeat(100)), 'c.csv').sizes).toHaveLength(2);
  });

  it('with a long title is refused where it stands', () => {
    const titled = (length: number): string => `# title: ${'x'.repeat(length)}\n${chart('10')}`;
    refused(titled(101), 1, 'the title', '100 characters');
    refused(titled(5_000), 1, 'the title');
    expect(readChart(titled(100), 'c.csv').comments[0]?.text).toHaveLength(107);
    const pattern = `# title: ${'x'.repeat(101)}\n${FRONT}`;
    expectRefusal(() => readPattern(pattern, 'p.csv'), 'file-too-large', { file: 'p.csv', row: 1 });
  });

  it.each(['10\nL', '10\u2028L'])('with the label %j on two lines is refused', (label) => {
    expectRefusal(() => readChart(chart(`"${label}"`), 'c.csv'), 'character-unseen', {
      file: 'c.csv',
      row: 2,
      column: 3,
    });
  });

  it.each([
    ['an escape', '\u001b[31m10', '\\u001B'],
    ['NUL', '1\u00000', '\\u0000'],
    ['a bell', '10\u0007', '\\u0007'],
    ['a control of C1', '\u009b31m10', '\\u009B'],
    ['text turned around', '\u202e01', '\\u202E'],
    ['an isolate', '\u206610\u2069', '\\u2066'],
  ])('with %s is refused where it stands', (_, label, got) => {
    const place = { file: 'c.csv', row: 2, column: 3 };
    expectRefusal(
      () => readChart(chart(label), 'c.csv'),
      'character-unseen',
      place,
      `Got: ${got}.`,
    );
    expectRefusal(() => readChart(`# ${label}\n${chart('10')}`, 'c.csv'), 'character-unseen', {
      file: 'c.csv',
      row: 1,
    });
  });
});

describe('a formula', () => {
  const place = { field: 'set' };
  const deep = (text: string): void => {
    expectRefusal(() => parseFormula(text, place), 'formula-not-allowed', place, 'deeply nested');
  };

  it('that is too long is refused', () => {
    const sum = (length: number): string => '1+'.repeat(length / 2 - 1) + '10';
    expect(sum(1_000)).toHaveLength(1_000);
    expect(parseFormula(sum(1_000), place).names).toEqual([]);
    expectRefusal(
      () => parseFormula(sum(1_002), place),
      'formula-not-allowed',
      place,
      'too long',
      'Allowed: 1000 characters',
    );
    expectRefusal(() => parseFormula('-'.repeat(3_000) + '1', place), 'formula-not-allowed', place);
  });

  it('that is nested too deeply is refused', () => {
    const inside = (depth: number): string => `${'('.repeat(depth)}1${')'.repeat(depth)}`;
    expect(parseFormula(inside(50), place).names).toEqual([]);
    deep(inside(51));
    deep('-'.repeat(51) + '1');
    deep('- '.repeat(51) + '1');
    deep(`1${'^1'.repeat(51)}`);
    deep(`${'abs('.repeat(51)}1${')'.repeat(51)}`);
    expect(parseFormula(`${'-'.repeat(50)}1`, place).names).toEqual([]);
  });
});

describe('a pattern', () => {
  const RULES =
    '# unit: in\npiece,point,size,dx,dy\nfront,side_hip,12,0,0\nfront,side_hip,14,1,0\n';

  it('with a point far away is refused there', () => {
    const far = FRONT.replace('front,side_hem,9,25', 'front,hip_notch,9,90000,notch,,\n$&');
    expectRefusal(
      () => graded(far, RULES),
      'outline-malformed',
      { file: 'base.csv', row: 10, column: 2, point: 'hip_notch' },
      'farther from the first of its piece than any piece is long',
    );
  });

  it('whose rule moves a point far away is refused there', () => {
    expectRefusal(
      () => graded(FRONT, RULES.replace('14,1', '14,90000')),
      'rule-too-far',
      { file: 'rules.csv', row: 3, point: 'front.side_hip' },
      'up to 1000 mm',
    );
  });
});

describe('a drawing', () => {
  it('of too many lines is refused, and so is its rule table', () => {
    const text = '0\nLINE\n'.repeat(500_001);
    const refusal = (read: (text: string, file: string) => unknown): void => {
      expectRefusal(
        () => read(text, 'x'),
        'file-too-large',
        { file: 'x', row: 1_000_001 },
        'too many lines',
      );
    };
    refusal(rawEntities);
    refusal(readRuleTable);
    expect(rawEntities(`${'0\nLINE\n'.repeat(10_000)}0\nEOF\n`, 'x')).toHaveLength(10_001);
  });
});

describe('a text for the terminal', () => {
  it('has the codes of what would move what it shows', () => {
    expect(printable('a\u001b[2J\nb\u202e')).toBe('a\\u001B[2J\\u000Ab\\u202E');
    expect(terminalText('a\u001b[31mb\u001b[0m\n\u0007', false)).toBe(
      'a\\u001B[31mb\\u001B[0m\n\\u0007',
    );
    expect(terminalText('a\u001b[31mb\u001b[2J\n', true)).toBe('a\u001b[31mb\\u001B[2J\n');
  });
});
