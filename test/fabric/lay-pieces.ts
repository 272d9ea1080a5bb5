/** Cut pieces made by hand, and a test of lays that shares nothing with the engine's search. */
import { FillRule, areaPathsD, intersectD } from 'clipper2-ts';
import fc from 'fast-check';
import { expect } from 'vitest';
import { pointBounds } from '../../src/geometry/bounds';
import type { Lay } from '../../src/index';
import type { CutPiece } from '../../src/pattern/cut-piece';
import type { Cutting } from '../../src/pattern/piece';
import { piecePlan } from '../../src/pattern/piece';

export type Corner = readonly [x: number, y: number];
interface Place {
  readonly x: number;
  readonly y: number;
}

/** A piece whose cut line joins `corners`; its grain runs down unless told otherwise. */
export function piece(
  name: string,
  corners: readonly Corner[],
  cutting: Partial<Cutting> = {},
  grain: readonly [Corner, Corner] = [
    [1, 1],
    [1, 2],
  ],
): CutPiece {
  const points = corners.map(([x, y]) => ({ x, y }));
  const cut = points.map((from, i) => ({
    kind: 'line' as const,
    from,
    to: points[(i + 1) % points.length] ?? from,
  }));
  const plan = piecePlan({
    name,
    part: 'panel',
    cuttings: [{ cloth: 'shell', count: 1, onFold: false, ...cutting }],
    pointNames: [],
    handles: new Set(),
    outline: [],
    marks: [],
  });
  const bottom = Math.max(...corners.map(([, y]) => y));
  return {
    piece: { plan, points: [] },
    number: 1,
    net: cut,
    cut,
    corners: new Map(),
    notches: [],
    drillHoles: [],
    grain: {
      from: { x: grain[0][0], y: grain[0][1] },
      to: { x: grain[1][0], y: grain[1][1] },
    },
    fold: cutting.onFold === true ? { from: { x: 0, y: bottom }, to: { x: 0, y: 0 } } : undefined,
    allowances: new Map(),
  };
}

export function rectangle(
  name: string,
  width: number,
  height: number,
  cutting: Partial<Cutting> = {},
): CutPiece {
  const corners: Corner[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ];
  return piece(name, corners, cutting);
}

/** Random simple polygons: corners at rising angles round a middle, some of them hollow. */
const anyCorners: fc.Arbitrary<readonly Corner[]> = fc
  .array(fc.integer({ min: 60, max: 300 }), { minLength: 3, maxLength: 12 })
  .map((radii) =>
    radii.map((radius, i): Corner => {
      const angle = (2 * Math.PI * i) / radii.length;
      return [300 + radius * Math.cos(angle), 300 + radius * Math.sin(angle)];
    }),
  );

/** Halves with their fold along x = 0: widths at even levels, straight between. */
const anyHalf: fc.Arbitrary<readonly Corner[]> = fc
  .array(fc.integer({ min: 30, max: 300 }), { minLength: 2, maxLength: 8 })
  .map((widths) => [
    [0, 0],
    ...widths.map((width, i): Corner => [width, i * 90]),
    [0, (widths.length - 1) * 90],
  ]);

/** One to five pieces, cut once, as a pair, or on the fold. */
export const anyPieces: fc.Arbitrary<readonly CutPiece[]> = fc
  .array(
    fc.oneof(
      anyCorners.map((corners) => ({ corners, count: 1, onFold: false })),
      anyCorners.map((corners) => ({ corners, count: 2, onFold: false })),
      anyHalf.map((corners) => ({ corners, count: 1, onFold: true })),
    ),
    { minLength: 1, maxLength: 5 },
  )
  .map((made) =>
    made.map(({ corners, count, onFold }, i) =>
      piece(`piece-${i + 1}`, corners, { count, onFold }),
    ),
  );

/** mm. Rounding errors are far below it, and no knife cuts as closely. */
const TOUCH = 1e-4;
/** Square mm that two pieces may seem to share where their sides run along each other. */
const SHARED = 0.05;

interface Flat {
  readonly name: string;
  readonly corners: readonly Place[];
}

/**
 * What is cut from the cloth, all of it opened out: x from its left edge. Worked out here from the
 * words of the layers alone: a fold copies what lies on two layers, and what is cut from one layer
 * is cut once, from the upper one if it lies face down.
 */
export function openedOut({ cloth, folding, placements }: Lay): readonly Flat[] {
  return placements.flatMap(({ piece: cut, zone, corners, onFold, mirrored, layers }) => {
    const { name } = cut.piece.plan;
    const as = (to: (x: number) => number): Flat => ({
      name,
      corners: corners.map(({ x, y }) => ({ x: to(x), y })),
    });
    if (cloth.fold === 'open') return [as((x) => x)];
    const isSecond =
      cloth.fold === 'middle' &&
      corners.every(({ x }) => x >= folding.across - folding.flap - TOUCH);
    const lower = as((x) => folding.flap + x);
    const upper = as((x) => folding.flap + (isSecond ? 2 * folding.across : 0) - x);
    if (zone === 'fold' || zone === 'second-fold') {
      expect(layers).toBe(2);
      const edge = zone === 'fold' ? 0 : folding.across;
      if (onFold) expect(corners.some(({ x }) => Math.abs(x - edge) < TOUCH)).toBe(true);
      expect(isSecond).toBe(zone === 'second-fold');
      return [lower, upper];
    }
    expect(layers).toBe(1);
    return [zone === 'rest' && mirrored ? upper : lower];
  });
}

/**
 * Every pair of pieces that share cloth, every one that leaves it, and every one that is cut from one
 * layer where there are two and is not said to be cut last: all should be empty.
 */
export function faults(lay: Lay): readonly string[] {
  const { cloth, folding, length, placements } = lay;
  const flat = openedOut(lay);
  const outside = flat.filter(({ corners }) =>
    corners.some(
      ({ x, y }) =>
        x < cloth.selvage - TOUCH ||
        x > cloth.width - cloth.selvage + TOUCH ||
        y < -TOUCH ||
        y > length + TOUCH,
    ),
  );
  const covered = placements.filter(
    ({ zone, corners }) =>
      (zone === 'strip' && corners.some(({ x }) => x < folding.flap - TOUCH)) ||
      (zone === 'opened-end' && corners.some(({ y }) => y < lay.folded - TOUCH)),
  );
  const overlaps = flat.flatMap((a, i) =>
    flat
      .slice(i + 1)
      .filter((b) => overlap(a.corners, b.corners))
      .map((b) => `${a.name} overlaps ${b.name}`),
  );
  return [
    ...outside.map(({ name }) => `${name} leaves the cloth`),
    ...covered.map(({ piece: { piece: own } }) => `${own.plan.name} lies under a layer`),
    ...overlaps,
  ];
}

/** Whether two polygons have area in common, as a library for polygons sees it. */
export function overlap(a: readonly Place[], b: readonly Place[]): boolean {
  const [p, q] = [a, b].map((polygon) => pointBounds(polygon));
  if (p === undefined || q === undefined) return false;
  if (p.right <= q.left || q.right <= p.left || p.bottom <= q.top || q.bottom <= p.top)
    return false;
  const shared = intersectD([[...a]], [[...b]], FillRule.NonZero, 6);
  return Math.abs(areaPathsD(shared)) > SHARED;
}
