import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cloth, Lay, NoLay } from '../../src/index';
import { isLay } from '../../src/fabric/lay';
import { layShapes } from '../../src/fabric/shapes';
import { shortestLay } from '../../src/fabric/shortest-lay';
import type { CutPiece } from '../../src/pattern/cut-piece';
import { anyPieces, faults, overlap, piece, rectangle } from './lay-pieces';
import { runs } from '../samples';

const OPEN: Cloth = { width: 1000, selvage: 0, fold: 'open', nap: 'with' };
const FOLDED: Cloth = { ...OPEN, fold: 'folded' };

function tried(pieces: readonly CutPiece[], cloth: Cloth): Lay | NoLay {
  return shortestLay(layShapes(pieces, 'shell', cloth), cloth);
}

function laid(pieces: readonly CutPiece[], cloth: Cloth): Lay {
  const lay = tried(pieces, cloth);
  if (!isLay(lay)) throw new RangeError(`${lay.piece} does not go on the cloth`);
  return lay;
}

describe('lays whose optimum is known', () => {
  it('puts rectangles beside and below each other without waste', () => {
    const pieces = [
      rectangle('a', 400, 500),
      rectangle('b', 1000, 200),
      rectangle('c', 600, 300),
      rectangle('d', 300, 200, { count: 2 }),
    ];
    const lay = laid(pieces, OPEN);
    expect(lay.length).toBeCloseTo(700, 6);
    expect(lay.utilization).toBeCloseTo(1, 9);
    expect(lay.bounds.area).toBeCloseTo(700, 6);
    expect(faults(lay)).toEqual([]);
  });

  it('puts the half front on the fold and the back beside it', () => {
    const pieces = [
      rectangle('front', 280, 720, { onFold: true }),
      rectangle('back', 220, 700, { count: 2 }),
    ];
    const lay = laid(pieces, FOLDED);
    expect(lay.length).toBeCloseTo(720, 6);
    const front = lay.placements.find(({ onFold }) => onFold);
    expect(Math.min(...(front?.corners ?? []).map(({ x }) => x))).toBeCloseTo(0, 9);
    expect(lay.area).toBeCloseTo(2 * (280 * 720 + 220 * 700), 3);
  });

  it('keeps what is not cut on the fold away from it, as long as the cloth is wide enough', () => {
    const leastX = (lay: Lay, name: string): number =>
      Math.min(
        ...lay.placements
          .filter((placed) => placed.piece.piece.plan.name === name)
          .flatMap(({ corners }) => corners.map(({ x }) => x)),
      );
    const band = laid([rectangle('band', 90, 700)], FOLDED);
    expect(leastX(band, 'band')).toBeCloseTo(10, 9);
    expect(band.length).toBeCloseTo(700, 9);
    // Two beside each other move together; 495 mm of 500 leave no room.
    const two = laid([rectangle('a', 240, 700), rectangle('b', 250, 700)], FOLDED);
    expect(Math.min(leastX(two, 'a'), leastX(two, 'b'))).toBeCloseTo(10, 9);
    expect(faults(two)).toEqual([]);
    const full = laid([rectangle('a', 245, 700), rectangle('b', 250, 700)], FOLDED);
    expect(Math.min(leastX(full, 'a'), leastX(full, 'b'))).toBeCloseTo(0, 9);
    expect(full.length).toBeCloseTo(700, 9);
  });

  it('lays pieces on the fold one after the other, which the bound knows', () => {
    const pieces = [
      rectangle('front', 200, 700, { onFold: true }),
      rectangle('facing', 200, 80, { onFold: true }),
    ];
    const lay = laid(pieces, FOLDED);
    expect(lay.length).toBeCloseTo(780, 6);
    expect(lay.bounds.best).toBeCloseTo(780, 6);
  });

  it('turns one of two wedges where there is no nap', () => {
    const wedge = (name: string): CutPiece =>
      piece(name, [
        [0, 0],
        [1000, 0],
        [0, 800],
      ]);
    const wedges = [wedge('a'), wedge('b')];
    expect(laid(wedges, { ...OPEN, nap: 'without' }).length).toBeCloseTo(800, 3);
    const upright = laid(wedges, OPEN);
    expect(upright.length).toBeGreaterThan(1599);
    expect(upright.placements.every(({ turned }) => !turned)).toBe(true);
  });

  it('proves that pieces wider than half the cloth take both their lengths', () => {
    const lay = laid([rectangle('a', 510, 700), rectangle('b', 510, 600)], OPEN);
    expect(lay.length).toBeCloseTo(1300, 6);
    expect(lay.bounds.best).toBeCloseTo(1300, 6);
    expect(lay.bounds.area).toBeCloseTo(663, 6);
  });

  it('lets pieces of just half the cloth lie side by side', () => {
    const lay = laid([rectangle('a', 500, 700), rectangle('b', 500, 700)], OPEN);
    expect(lay.length).toBeCloseTo(700, 6);
    expect(lay.bounds.best).toBeLessThanOrEqual(lay.length + 1e-6);
  });
});

describe('what the cloth asks for', () => {
  it('lays the length of a band along the cloth, by its grain', () => {
    const band = piece(
      'waistband',
      [
        [0, 0],
        [800, 0],
        [800, 80],
        [0, 80],
      ],
      {},
      [
        [100, 40],
        [700, 40],
      ],
    );
    for (const cloth of [OPEN, FOLDED, { ...OPEN, nap: 'without' as const }]) {
      const lay = laid([band], cloth);
      expect(lay.length).toBeCloseTo(800, 6);
      const { from, to } = lay.placements[0]?.grain ?? { from: { x: 0 }, to: { x: NaN } };
      expect(to.x).toBeCloseTo(from.x, 9);
    }
  });

  it('lays a pair on open cloth as a piece and its image, and half a piece whole', () => {
    const wedge = piece(
      'back',
      [
        [0, 0],
        [200, 0],
        [300, 700],
        [0, 700],
      ],
      { count: 2 },
    );
    const pair = laid([wedge], OPEN).placements;
    expect(pair.map(({ mirrored }) => mirrored).toSorted()).toEqual([false, true]);
    const front = laid([rectangle('front', 200, 700, { onFold: true })], OPEN);
    expect(front.area).toBeCloseTo(400 * 700, 3);
    const across = (front.placements[0]?.corners ?? []).map(({ x }) => x);
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(400, 9);
  });

  it('keeps only one layer of a piece cut once from folded cloth', () => {
    const lay = laid([rectangle('band', 80, 700)], FOLDED);
    expect(lay.placements.map(({ layers }) => layers)).toEqual([1]);
    expect(lay.area).toBeCloseTo(80 * 700, 6);
  });

  it('keeps off the selvages', () => {
    const pieces = [rectangle('a', 480, 300), rectangle('b', 480, 300)];
    expect(laid(pieces, { ...OPEN, selvage: 20 }).length).toBeCloseTo(300, 6);
    expect(laid(pieces, { ...OPEN, selvage: 21 }).length).toBeCloseTo(600, 6);
  });

  it('says which piece is too wide for the cloth, and by how much', () => {
    const wide = rectangle('front', 520, 700, { onFold: true });
    const cloth = { ...FOLDED, selvage: 10 };
    expect(tried([wide], cloth)).toEqual({
      piece: 'front',
      cause: 'width',
      needed: 520,
      given: 490,
    });
    expect(isLay(tried([rectangle('front', 480, 700, { onFold: true })], cloth))).toBe(true);
  });

  it('does not lay a piece on the fold whose fold edge crosses the grain', () => {
    const corners = [
      [0, 0],
      [300, 0],
      [300, 300],
      [0, 300],
    ] as const;
    const bias = piece('front', corners, { onFold: true }, [
      [0, 0],
      [100, 100],
    ]);
    expect(tried([bias], FOLDED)).toMatchObject({ piece: 'front', cause: 'grain' });
    expect(isLay(tried([bias], OPEN))).toBe(true);
  });
});

describe('lays of random pieces', () => {
  const anyCloth: fc.Arbitrary<Cloth> = fc.record({
    width: fc.integer({ min: 1300, max: 2000 }),
    selvage: fc.integer({ min: 0, max: 15 }),
    fold: fc.constantFrom('folded', 'open'),
    nap: fc.constantFrom('with', 'without'),
  });

  it('never overlap, stay on the cloth, keep the grain and the nap', () => {
    fc.assert(
      fc.property(anyPieces, anyCloth, (pieces, cloth) => {
        const lay = laid(pieces, cloth);
        expect(faults(lay)).toEqual([]);
        for (const { grain, turned } of lay.placements) {
          expect(Math.abs(grain.to.x - grain.from.x)).toBeLessThan(1e-9);
          expect(Math.sign(grain.to.y - grain.from.y)).toBe(turned ? -1 : 1);
          if (cloth.nap === 'with') expect(turned).toBe(false);
        }
      }),
      { numRuns: runs(30) },
    );
  }, 60_000);

  it('are never shorter than the bounds', () => {
    fc.assert(
      fc.property(anyPieces, anyCloth, (pieces, cloth) => {
        const { length, bounds, utilization } = laid(pieces, cloth);
        expect(length).toBeGreaterThanOrEqual(bounds.best - 1e-3);
        expect(bounds.best).toBeGreaterThanOrEqual(bounds.area - 1e-6);
        expect(utilization).toBeLessThanOrEqual(1 + 1e-9);
      }),
      { numRuns: runs(20) },
    );
  }, 60_000);

  it('come out the same every time', () => {
    fc.assert(
      fc.property(anyPieces, anyCloth, (pieces, cloth) => {
        expect(laid(pieces, cloth)).toEqual(laid(pieces, cloth));
      }),
      { numRuns: runs(4) },
    );
  }, 60_000);
});

it('the overlap test sees what it should', () => {
  const square = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
    { x: 0, y: 10 },
  ];
  const moved = (by: number) => square.map(({ x, y }) => ({ x: x + by, y }));
  expect(overlap(square, moved(10))).toBe(false);
  expect(overlap(square, moved(9.99))).toBe(true);
  expect(overlap(square, square)).toBe(true);
  expect(overlap(square, [...square.map(({ x, y }) => ({ x: 4 + x / 10, y: 4 + y / 10 }))])).toBe(
    true,
  );
});
