import { describe, expect, it } from 'vitest';
import { publishedTable } from '../../src/standards/published-tables';
import { chosenTables, rankTable } from '../../src/standards/rank-tables';

/** Bodies from inches: waist and hip. */
function bodies(...girths: readonly (readonly [number, number])[]) {
  return girths.map(([waist, hip], i) => ({
    size: `${i + 1}`,
    waist: waist * 25.4,
    hip: hip * 25.4,
  }));
}

const ids = (...args: Parameters<typeof chosenTables>) =>
  chosenTables(...args).map(({ table }) => table.id);

describe('rankTable', () => {
  it('tells how much is covered and how near it lies, as worked by hand', () => {
    // ASTM D5585-95 covers waists of 24 to 36 1/2 in: of 30 to 40 in that is 6.5 of 10. At 30 in it
    // has 40 + 1/3 * 1.5 = 40.5 in, at 35 in 45.5 in: the chart's 41 and 45 in are 1/2 in off each.
    const rank = rankTable(publishedTable('astm-d5585-95'), bodies([30, 41], [35, 45], [40, 50]));
    expect(rank.coverage).toBeCloseTo(0.65, 9);
    expect(rank.distance / 25.4).toBeCloseTo(0.5, 9);
    expect(rank).toMatchObject({ identical: false, shared: [] });
  });

  it('knows a table by its cells, whatever its sizes are called and whichever are left out', () => {
    // ASTM D5585-95: 6 is 26 and 36 1/2 in, 10 is 28 and 38 1/2, 16 is 32 1/2 and 43; and one above it.
    const some = bodies([26, 36.5], [28, 38.5], [32.5, 43], [40, 50]);
    const rank = rankTable(publishedTable('astm-d5585-95'), some);
    expect(rank.identical).toBe(true);
    expect(rank.shared.map(({ inTable }) => inTable)).toEqual(['6', '10', '16']);
    // In whole millimeters no cell is off by more than half a millimeter.
    const rounded = some.map(({ size, waist, hip }) => ({
      size,
      waist: Math.round(waist),
      hip: Math.round(hip),
    }));
    expect(rankTable(publishedTable('astm-d5585-95'), rounded).identical).toBe(true);
    const changed = bodies([26, 36.5], [28, 38.625], [32.5, 43], [40, 50]);
    expect(rankTable(publishedTable('astm-d5585-95'), changed).identical).toBe(false);
    // Two sizes alike may be chance in a longer chart.
    const two = bodies([26, 36.5], [28, 38.5], [40, 50]);
    expect(rankTable(publishedTable('astm-d5585-95'), two).identical).toBe(false);
  });

  it('has nothing to say of a chart beyond the table', () => {
    const rank = rankTable(publishedTable('astm-d5585-95'), bodies([40, 50], [42, 52]));
    expect(rank).toMatchObject({ coverage: 0, distance: NaN, identical: false });
  });
});

describe('chosenTables', () => {
  it('are three, one body type of an edition, plus sizes where they cover most', () => {
    // Drops of 8 in at waists of 26 to 32 in: the straight body of ASTM D5585-11e1 has 8 1/4 in at
    // 26 1/8, the curvy 11; no plus table begins below 31 1/2 in.
    const straight = ids(bodies([26, 34], [28, 36], [30, 38], [32, 40]));
    expect(straight).toHaveLength(3);
    expect(straight).toContain('astm-d5585-11e1-straight');
    expect(straight).not.toContain('astm-d5585-11e1-curvy');
    expect(straight.filter((id) => id.startsWith('astm-d6960'))).toEqual([]);
    // The hips of ASTM D6960-04 at 38 to 46 in of waist.
    const plus = ids(bodies([38, 48], [40, 50.25], [42, 52], [46, 56]));
    expect(plus[0]).toBe('astm-d6960-04');
  });

  it('cover more than a third of the chart, or are none', () => {
    // Waists of 33 to 45 in: the misses of 1968 end at 34 in, a twelfth of the range, those of ASTM
    // D5585-95 at 36 1/2 in, 29 % of it; ASTM D6960-04 runs from 31 1/2 to 49 1/2 in.
    const shown = chosenTables(bodies([33, 43], [34, 44], [35, 45], [36, 46], [45, 55]));
    const names = shown.map(({ table }) => table.id);
    expect(names).toContain('astm-d6960-04');
    expect(names).not.toContain('home-misses-1968');
    expect(names).not.toContain('astm-d5585-95');
    for (const { coverage } of shown) expect(coverage).toBeGreaterThan(1 / 3);
  });

  it('are none for a chart beyond every table, and for no bodies', () => {
    expect(ids(bodies([71, 75], [73, 77]))).toEqual([]);
    expect(ids([])).toEqual([]);
  });

  it('has a survey only where the chart is its figures', () => {
    // Survey of 1988: classes 84, 88 and 92.
    const cm = (waist: number, hip: number) => [waist / 2.54, hip / 2.54] as const;
    const survey = bodies(cm(63.48, 84.62), cm(66.44, 88.35), cm(68.79, 92.17));
    expect(ids(survey)[0]).toBe('ansur-1988');
    expect(ids(bodies(cm(63.48, 84.62), cm(66.44, 88.35), cm(68.79, 92.5)))).not.toContain(
      'ansur-1988',
    );
  });
});
