import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxHolds, boxesOverlap } from '../../src/geometry/bounds';
import type { Box } from '../../src/geometry/bounds';
import { between, point } from '../../src/geometry/point';
import { onFewestTiles } from '../../src/print/fewest-tiles';
import { inkOf } from '../../src/print/ink';
import type { Arrangement, PlanePart } from '../../src/print/plane';
import { part, planeShapes } from '../../src/print/plane';
import { onStrip, onTable } from '../../src/print/side-by-side';
import { tilesOf } from '../../src/print/tile-grid';
import { turned } from '../../src/print/turned';
import { polyline, rectangle } from '../../src/render/scene';
import { runs } from '../samples';

const LINE = { color: '#000000', width: 0.5 };
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
