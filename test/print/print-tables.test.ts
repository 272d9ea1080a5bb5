/** The tables of a print: what a chart states is printed as it stands there. */
import { describe, expect, it } from 'vitest';
import { printTables } from '../../src/files/print-tables';
import { tableBlocks } from '../../src/print/size-table';
import { demo } from './printing';

/** The cells of `waist_girth` in a chart of one unit, by the unit in which they are printed. */
function waists(unit: string, cells: readonly string[], hips: readonly string[]) {
  const chart = `# unit: ${unit}\nmeasurement,1,2,3\nwaist_girth,${cells.join()}\nhip_girth,${hips.join()}\n`;
  const [table] = printTables(demo({ chart, base: '2', style: 'pencil' }));
  const row = table?.rows.find(({ name }) => name === 'waist girth');
  return {
    heading: table?.heading,
    cells: new Map(row?.lines.map((line) => [line.unit, line.cells])),
  };
}

describe('the table of bodies', () => {
  it('has inches as an inch chart has them, and rounds only centimeters', () => {
    const { heading, cells } = waists('in', ['25 11/16', '26.7', '28'], ['35', '36', '37']);
    expect(heading).toBe(
      'Body measurements in inches and, to the nearest millimeter, in centimeters',
    );
    expect(cells.get('in')).toEqual(['25 11/16', '26.7', '28']);
    // 25.6875 * 2.54 = 65.246, 26.7 * 2.54 = 67.818, 28 * 2.54 = 71.12.
    expect(cells.get('cm')).toEqual(['65.2', '67.8', '71.1']);
  });

  it.each([
    ['cm', ['65.25', '68', '72'], ['90', '93', '97']],
    ['mm', ['652.5', '680', '720'], ['900', '930', '970']],
  ])('has centimeters as a chart in %s has them, and rounds only inches', (unit, own, hips) => {
    const { heading, cells } = waists(unit, own, hips);
    expect(heading).toBe('Body measurements in centimeters and, to the nearest eighth, in inches');
    expect(cells.get('cm')).toEqual(['65.25', '68', '72']);
    // 65.25 / 2.54 = 25.69, 68 / 2.54 = 26.77, 72 / 2.54 = 28.35.
    expect(cells.get('in')).toEqual(['25 3/4', '26 3/4', '28 3/8']);
  });
});

describe('a table of sizes', () => {
  // Type of 2.8 mm; 85 % of it still reads as easily, and lines are 4.2 mm apart.
  it('breaks a name that has no room rather than set it in small type', () => {
    const row = (name: string) => ({
      name,
      detail: 'folded once',
      lines: ['cm', 'yd'].map((unit) => ({ unit, cells: ['70'] })),
    });
    const table = (name: string) => ({
      heading: 'h',
      sizes: ['1'],
      rows: [row(name), row('next')],
    });
    const wordsOf = (name: string) =>
      tableBlocks(table(name), 190).flatMap(({ shapes }) =>
        shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : [])),
      );
    const long = wordsOf('45, 54, 60 in, 112, 140, 150 cm');
    const names = long.filter(({ at }) => at.x === 0).slice(1);
    expect(names.map(({ words }) => words).slice(-4)).toEqual([
      '140, 150 cm',
      'folded once',
      'next',
      'folded once',
    ]);
    for (const { size } of names) expect(size).toBeGreaterThanOrEqual(0.85 * 2.8);
    const level = (words: readonly { words: string; at: { y: number } }[], name: string) =>
      words.find((one) => one.words === name)?.at.y ?? NaN;
    expect(level(long, 'next') - level(wordsOf('45 in'), 'next')).toBeCloseTo(4.2, 6);
  });
});
