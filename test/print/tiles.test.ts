import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxHolds, boxesOverlap } from '../../src/geometry/bounds';
import type { Box } from '../../src/geometry/bounds';
import { between, point } from '../../src/geometry/point';
import { gradePattern, printFiles } from '../../src/index';
import { onFewestTiles } from '../../src/print/fewest-tiles';
import { inkOf } from '../../src/print/ink';
import type { SheetPaper } from '../../src/print/paper';
import type { PlanePart } from '../../src/print/plane';
import { part, planeShapes } from '../../src/print/plane';

import { tileFormats } from '../../src/print/tile-format';
import { tilesOf } from '../../src/print/tile-grid';
import { turned } from '../../src/print/turned';
import { polyline, rectangle } from '../../src/render/scene';
import type { Arrangement } from '../../src/render/side-by-side';
import { onStrip, onTable } from '../../src/render/side-by-side';
import { runs } from '../samples';

const LINE = { color: '#000000', width: 0.5 };
const A4: SheetPaper = { kind: 'sheet', name: 'a4', width: 210, height: 297 };
const TILE = { width: 180, height: 267 };

function rectanglePart(width: number, height: number): PlanePart {
  return part(
    `${width} x ${height}`,
    [],
    [rectangle('outline', { left: 0, top: 0, right: width, bottom: height }, LINE)],
  );
}

function boxesOf({ parts, zeros }: Arrangement): readonly Box[] {
  return parts.map(({ box }, i) => {
    const { x, y } = zeros[i] ?? point(NaN, NaN);
    return { left: box.left + x, top: box.top + y, right: box.right + x, bottom: box.bottom + y };
  });
}

function expectApart(arrangement: Arrangement): void {
  const boxes = boxesOf(arrangement);
  for (const [i, box] of boxes.entries()) {
    expect(box.left).toBeGreaterThanOrEqual(0);
    expect(box.top).toBeGreaterThanOrEqual(0);
    for (const other of boxes.slice(0, i)) expect(boxesOverlap(box, other)).toBe(false);
  }
}

const sides = fc.tuple(fc.integer({ min: 20, max: 900 }), fc.integer({ min: 20, max: 900 }));
const someParts = fc
  .array(sides, { minLength: 1, maxLength: 5 })
  .map((all) => all.map(([width, height]) => rectanglePart(width, height)));

describe('parts on tiles', () => {
  it('lie apart, and all their ink is on tiles', () => {
    fc.assert(
      fc.property(someParts, (parts) => {
        const arrangement = onFewestTiles(parts, TILE);
        expectApart(arrangement);
        const shapes = planeShapes(arrangement, []);
        const tiles = tilesOf(shapes, { tile: TILE });
        expect(tiles.length).toBeLessThanOrEqual(arrangement.tiles);
        const lost = inkOf(shapes).chords.flatMap(({ from, to }) =>
          Array.from({ length: 51 }, (_, k) => between(from, to, k / 50)).filter(
            ({ x, y }) =>
              !tiles.some(({ box }) => boxHolds(box, { left: x, right: x, top: y, bottom: y })),
          ),
        );
        expect(lost).toEqual([]);
      }),
      { numRuns: runs(4) },
    );
  });

  it('take no more tiles than parts side by side do', () => {
    fc.assert(
      fc.property(someParts, (parts) => {
        const plain = tilesOf(planeShapes(onTable(parts), []), { tile: TILE }).length;
        const few = tilesOf(planeShapes(onFewestTiles(parts, TILE), []), { tile: TILE }).length;
        expect(few).toBeLessThanOrEqual(plain);
      }),
      { numRuns: runs(4) },
    );
  });

  it('cut nothing that is to stay whole', () => {
    // A square of 100 mm in a part that no tile holds.
    const whole = { left: 30, top: 60, right: 130, bottom: 160 };
    fc.assert(
      fc.property(someParts, (parts) => {
        const { zeros } = onFewestTiles(
          [...parts, { ...rectanglePart(320, 400), whole: [whole] }],
          TILE,
        );
        const { x, y } = zeros.at(-1) ?? point(NaN, NaN);
        expect((x + whole.left) % TILE.width).toBeLessThanOrEqual(TILE.width - 100);
        expect((y + whole.top) % TILE.height).toBeLessThanOrEqual(TILE.height - 100);
      }),
      { numRuns: runs(4) },
    );
  });

  it('share a tile if they can', () => {
    const arrangement = onFewestTiles([rectanglePart(80, 100), rectanglePart(70, 120)], TILE);
    expect(arrangement.tiles).toBe(1);
  });

  it('leave out what is blank inside a large piece', () => {
    const shapes = planeShapes(onFewestTiles([rectanglePart(700, 1000)], TILE), []);
    const tiles = tilesOf(shapes, { tile: TILE });
    // 4 columns by 4 rows, of which only the border is printed.
    expect(tiles).toHaveLength(12);
    expect(tiles.map(({ name }) => name)).toEqual([
      'A1',
      'B1',
      'C1',
      'D1',
      'A2',
      'D2',
      'A3',
      'D3',
      'A4',
      'B4',
      'C4',
      'D4',
    ]);
  });
});

/** Millimeters of two rectangles: the first nearly fills a row of tiles, the second three columns. */
type Pair = readonly [readonly [number, number], readonly [number, number]];

/** Besides the pair that once found no room, some that leave as little of a tile beside them. */
const TIGHT_SEED = 1;
const TIGHT: readonly Pair[] = [
  [
    [703, 253],
    [528, 559],
  ],
  ...fc.sample(
    fc.tuple(
      fc.tuple(fc.integer({ min: 700, max: 880 }), fc.integer({ min: 250, max: 259 })),
      fc.tuple(fc.integer({ min: 523, max: 532 }), fc.integer({ min: 500, max: 760 })),
    ),
    { seed: TIGHT_SEED, numRuns: 24 },
  ),
];

describe(`two parts that nearly fill their tiles (seed ${TIGHT_SEED})`, () => {
  const formats = tileFormats(A4, { margin: 10, join: 'overlap' });

  it.each(TIGHT)('%o and %o are laid apart on A4, on no more tiles than side by side', (a, b) => {
    const parts = [rectanglePart(...a), rectanglePart(...b)];
    for (const format of formats) {
      const arrangement = onFewestTiles(parts, format.tile);
      expectApart(arrangement);
      const few = tilesOf(planeShapes(arrangement, []), format).length;
      const plain = tilesOf(planeShapes(onTable(parts), []), format).length;
      expect(few).toBeLessThanOrEqual(plain);
    }
  });

  it.each([
    [703, 253, 528, 559],
    [878, 258, 523, 614],
  ])('are printed from a pattern sheet: %i x %i and %i x %i mm', async (a, b, c, d) => {
    const pattern = `# unit: mm
# base: 12
piece,point,x,y
a,p1,0,0
a,p2,${a},0
a,p3,${a},${b}
a,p4,0,${b}
b,p1,0,0
b,p2,${c},0
b,p3,${c},${d}
b,p4,0,${d}
`;
    const result = gradePattern({
      pattern: { text: pattern, file: 'two.csv' },
      rules: {
        text: '# sizes: 12, 14\npiece,point,step_dx,step_dy\na,p1,0,0\n',
        file: 'rules.csv',
      },
    });
    const [file] = await printFiles(result, { paper: ['a4'], booklet: 'none' });
    const sheets = Number(/^(\d+) sheets/u.exec(file?.summary ?? '')?.[1]);
    // No sheet shows more of an outline than runs round its own tile.
    expect(sheets * 2 * (210 + 297)).toBeGreaterThanOrEqual(2 * (a + b + c + d));
    expect(sheets).toBeLessThanOrEqual(Number(/takes (\d+)/u.exec(file?.summary ?? '')?.[1]));
  });
});

describe('a grid to compare with', () => {
  it('keeps lines as far from its edges as the sheets do, so that it does not take fewer', async () => {
    // Five sizes with labels beside them are 555 mm wide: as much as three sheets of Letter show, and
    // nothing clear beside it.
    const rows = ['front', 'back'].flatMap((name) => [
      `${name},waist,0,0`,
      `${name},side,9,0`,
      `${name},side_hem,9,25`,
      `${name},hem,0,25`,
    ]);
    const moves = ['front', 'back'].flatMap((name) => [
      `${name},waist,0,0`,
      `${name},side,1/4,0`,
      `${name},side_hem,1/4,1/4`,
      `${name},hem,0,1/4`,
    ]);
    const result = gradePattern({
      pattern: {
        text: `# unit: in\n# base: 12\npiece,point,x,y\n${rows.join('\n')}\n`,
        file: 'two.csv',
      },
      rules: {
        text: `# sizes: 8, 10, 12, 14, 16\npiece,point,step_dx,step_dy\n${moves.join('\n')}\n`,
        file: 'rules.csv',
      },
    });
    const [file] = await printFiles(result, { paper: ['letter'], booklet: 'none' });
    const [sheets, plain] =
      /^(\d+) sheets.* takes (\d+)/u.exec(file?.summary ?? '')?.slice(1) ?? [];
    expect(Number(sheets)).toBeLessThanOrEqual(Number(plain));
  });
});

describe('parts on a strip', () => {
  it('lie apart and within it', () => {
    fc.assert(
      fc.property(someParts, fc.integer({ min: 950, max: 1500 }), (parts, width) => {
        const arrangement = onStrip(parts, width);
        expect(arrangement).toBeDefined();
        if (arrangement === undefined) return;
        expectApart(arrangement);
        for (const { right } of boxesOf(arrangement)) expect(right).toBeLessThanOrEqual(width);
      }),
    );
  });

  it('do not go on one that is narrower than a part', () => {
    expect(onStrip([rectanglePart(500, 20)], 400)).toBeUndefined();
  });
});

describe('a turned part', () => {
  it('is as wide as it was high, and reads from the right after a quarter turn', () => {
    const one = part('one', [], [polyline('outline', [point(0, 0), point(30, 10)], LINE)]);
    const { box, common } = turned(one);
    expect(box.right - box.left).toBeCloseTo(one.box.bottom - one.box.top, 9);
    expect(common).toMatchObject([{ segments: [{ to: { x: -10, y: 30 } }] }]);
  });
});
