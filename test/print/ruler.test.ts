/** What a sewer measures on a sheet to know that it was printed at true scale and glued right. */
import { describe, expect, it } from 'vitest';
import { readPaper } from '../../src/print/paper';
import { readPrintOptions } from '../../src/print/print-options';
import { ruler } from '../../src/print/ruler';
import { tileFormats } from '../../src/print/tile-format';

describe('the ruler', () => {
  it('has ticks at every 10 mm up to 100 above its line, and at every inch up to 4 below', () => {
    const ticks = { above: [] as number[], below: [] as number[] };
    for (const shape of ruler({ x: 20, y: 50 })) {
      if (shape.kind !== 'path') continue;
      const [{ from, to } = { from: { x: 0, y: 0 }, to: { x: 0, y: 0 } }] = shape.segments;
      if (from.x === to.x) ticks[to.y < 50 ? 'above' : 'below'].push(from.x - 20);
    }
    const rounded = (places: readonly number[]) => places.map((x) => Math.round(x * 1e6) / 1e6);
    expect(rounded(ticks.above)).toEqual([0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100]);
    expect(rounded(ticks.below)).toEqual([0, 25.4, 50.8, 76.2, 101.6]);
  });
});

describe('the strip to glue on', () => {
  it.each(['a4', 'letter', 'a3'])('of %s is 10 mm on the right and below', (name) => {
    const paper = readPaper(name);
    if (paper.kind !== 'sheet') throw new Error('a sheet');
    const { margin, join } = readPrintOptions({ paper: [name], margin: '10mm', join: 'overlap' });
    for (const { page, tile, corner, beyond } of tileFormats(paper, { margin, join })) {
      expect(beyond.right).toBe(10);
      expect(page.width - margin - (corner.x + tile.width)).toBeCloseTo(10, 9);
      expect(page.height - margin - (corner.y + tile.height)).toBeCloseTo(10, 9);
    }
  });
});
