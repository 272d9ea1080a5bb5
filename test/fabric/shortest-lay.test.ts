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
    // Two beside each other move together; 495 mm of 500 leave no room.
    const pair = (name: string, width: number): CutPiece =>
      rectangle(name, width, 700, { count: 2 });
    const two = laid([pair('a', 240), pair('b', 250)], FOLDED);
    expect(Math.min(leastX(two, 'a'), leastX(two, 'b'))).toBeCloseTo(10, 9);
    expect(faults(two)).toEqual([]);
    const full = laid([pair('a', 245), pair('b', 250)], FOLDED);
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

describe('tapered pieces', () => {
  /** A gore 695 long, 150 wide at the waist and 261 at the hem. */
  const gore = piece(
    'gore',
    [
      [55.5, 0],
      [205.5, 0],
      [261, 695],
      [0, 695],
    ],
    { count: 6 },
  );
  const cloth: Cloth = { width: 1500, selvage: 10, fold: 'open', nap: 'with' };

  it('lie past each other the same way up: six gores on 150 cm', () => {
    // By hand: shifted by s every second one, two neighbors lie 261 - 111 s / (2 * 695) from middle
    // to middle. Six take 261 and five such, which is 1480 for s = 216: a lay of 911.
    const lay = laid([gore], cloth);
    expect(lay.length).toBeLessThanOrEqual(911 + 4);
    expect(lay.length).toBeGreaterThan(910);
    expect(lay.placements.every(({ turned }) => !turned)).toBe(true);
    expect(faults(lay)).toEqual([]);
  });

  it('lie one up and one down where there is no nap, in one length', () => {
    // By hand: one down beside two that are up saves 2 * 55.5 of 6 * 261 = 1566, which leaves 1455 of
    // 1480; without it six do not lie side by side.
    const lay = laid([gore], { ...cloth, nap: 'without' });
    expect(lay.length).toBeCloseTo(695, 6);
    expect(new Set(lay.placements.map(({ turned }) => turned))).toEqual(new Set([true, false]));
    expect(faults(lay)).toEqual([]);
  });

  it('are proved to need two lengths where they just miss lying side by side', () => {
    // 1100 of 1050 mm: no line along the cloth has room for two of them in less than 1300.
    const pieces = [400, 400, 300].map((width, i) => rectangle(`${i}`, width, 650));
    const lay = laid(pieces, { ...OPEN, width: 1050 });
    expect(lay.length).toBeCloseTo(1300, 6);
    expect(lay.bounds.best).toBeCloseTo(1300, 3);
    expect(lay.bounds.area).toBeCloseTo((1100 * 650) / 1050, 6);
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

  describe('of a piece cut once, on folded cloth: one layer', () => {
    const zoneOf = (lay: Lay, name: string): string | undefined =>
      lay.placements.find(({ piece: { piece: own } }) => own.plan.name === name)?.zone;
    const front = (width: number): CutPiece => rectangle('front', width, 700, { onFold: true });

    it('alone it opens the cloth', () => {
      const lay = laid([rectangle('band', 80, 700)], FOLDED);
      expect(lay.placements.map(({ layers }) => layers)).toEqual([1]);
      expect([lay.folded, zoneOf(lay, 'band')]).toEqual([0, 'opened-end']);
      expect(lay.area).toBeCloseTo(80 * 700, 6);
    });

    it('beside others it is cut last, off the fold', () => {
      const lay = laid([front(400), rectangle('band', 80, 700)], FOLDED);
      expect(zoneOf(lay, 'band')).toBe('rest');
      expect(lay.length).toBeCloseTo(700, 6);
      expect(faults(lay)).toEqual([]);
    });

    it('where half the cloth is too narrow for both it has a strip of its own', () => {
      // 460 and 80 of 500; a strip of 80 leaves (1000 - 80) / 2 = 460 from the fold.
      const lay = laid([front(460), rectangle('band', 80, 700)], FOLDED);
      expect(zoneOf(lay, 'band')).toBe('strip');
      expect(lay.folding).toEqual({ flap: 460, strip: 80, across: 540 });
      expect(lay.length).toBeCloseTo(700, 6);
      expect(faults(lay)).toEqual([]);
    });

    it('where there is no room for a strip it lies past the others', () => {
      const lay = laid([front(461), rectangle('yoke', 600, 100)], FOLDED);
      expect(zoneOf(lay, 'yoke')).toBe('opened-end');
      expect([lay.folded, lay.length]).toEqual([700, 800]);
      expect(faults(lay)).toEqual([]);
    });
  });

  it('folds both selvages to the middle for two pieces on the fold', () => {
    const pieces = [
      rectangle('front', 240, 700, { onFold: true }),
      rectangle('back', 235, 680, { onFold: true }),
    ];
    const lay = laid(pieces, { ...FOLDED, fold: 'middle', selvage: 10 });
    // 1000 / 4 less the selvage is 240 for each of them.
    expect(lay.placements.map(({ zone }) => zone).toSorted()).toEqual(['fold', 'second-fold']);
    expect(lay.length).toBeCloseTo(700, 6);
    expect(faults(lay)).toEqual([]);
    expect(laid(pieces, { ...FOLDED, selvage: 10 }).length).toBeCloseTo(1380, 6);
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
  const anyCloth: fc.Arbitrary<Cloth> = fc
    .record({
      width: fc.integer({ min: 1300, max: 2000 }),
      selvage: fc.integer({ min: 0, max: 15 }),
      fold: fc.constantFrom<Cloth['fold']>('folded', 'middle', 'open'),
      nap: fc.constantFrom<Cloth['nap']>('with', 'without'),
    })
    .map((cloth) => (cloth.fold === 'middle' ? { ...cloth, width: 2 * cloth.width } : cloth));

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
