/** Cut pieces made by hand, and an overlap test that shares nothing with the engine's. */
import fc from 'fast-check';
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

/** Every pair of placements that share cloth, every one that leaves it: all should be empty. */
export function faults({ cloth, placements, length }: Lay): readonly string[] {
  const [least, most] =
    cloth.fold === 'folded'
      ? [0, cloth.width / 2 - cloth.selvage]
      : [cloth.selvage, cloth.width - cloth.selvage];
  const outside = placements.filter(({ corners }) =>
    corners.some(
      ({ x, y }) => x < least - TOUCH || x > most + TOUCH || y < -TOUCH || y > length + TOUCH,
    ),
  );
  const overlaps = placements.flatMap((a, i) =>
    placements
      .slice(i + 1)
      .filter((b) => overlap(a.corners, b.corners))
      .map((b) => [a, b] as const),
  );
  return [
    ...outside.map((p) => `${p.piece.piece.plan.name} leaves the cloth`),
    ...overlaps.map(([a, b]) => `${a.piece.piece.plan.name} overlaps ${b.piece.piece.plan.name}`),
  ];
}

/** Whether two polygons have area in common: sides cross, or a place of one lies deep in the other. */
export function overlap(a: readonly Place[], b: readonly Place[]): boolean {
  const crossing = sides(a).some((p) => sides(b).some((q) => cross(p, q)));
  return crossing || probes(a).some((p) => deep(p, b)) || probes(b).some((p) => deep(p, a));
}

type Side = readonly [from: Place, to: Place];

function sides(polygon: readonly Place[]): readonly Side[] {
  return polygon.map((from, i) => [from, polygon[(i + 1) % polygon.length] ?? from]);
}

/** Signed distance of a place from the line through a side. */
function off([from, to]: Side, { x, y }: Place): number {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  return ((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)) / long;
}

function cross(p: Side, q: Side): boolean {
  const apart = (a: number, b: number): boolean =>
    Math.min(a, b) < -TOUCH && Math.max(a, b) > TOUCH;
  return apart(off(p, q[0]), off(p, q[1])) && apart(off(q, p[0]), off(q, p[1]));
}

/** Corners, middles of sides, and places on level lines through the inside. */
function probes(polygon: readonly Place[]): readonly Place[] {
  const middles = sides(polygon).map(([a, b]) => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }));
  const levels = middles.flatMap(({ y }) => {
    const xs = sides(polygon)
      .filter(([a, b]) => a.y < y !== b.y < y)
      .map(([a, b]) => a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y))
      .sort((u, v) => u - v);
    return xs.flatMap((x, i) => (i % 2 === 0 ? [{ x: (x + (xs[i + 1] ?? x)) / 2, y }] : []));
  });
  return [...polygon, ...middles, ...levels];
}

function deep(place: Place, polygon: readonly Place[]): boolean {
  const inside =
    sides(polygon).filter(
      ([a, b]) =>
        a.y < place.y !== b.y < place.y &&
        place.x < a.x + ((b.x - a.x) * (place.y - a.y)) / (b.y - a.y),
    ).length %
      2 ===
    1;
  return inside && sides(polygon).every((side) => far(place, side));
}

function far({ x, y }: Place, [from, to]: Side): boolean {
  const along = { x: to.x - from.x, y: to.y - from.y };
  const square = along.x ** 2 + along.y ** 2;
  const t = square === 0 ? 0 : ((x - from.x) * along.x + (y - from.y) * along.y) / square;
  const nearest = Math.min(1, Math.max(0, t));
  return Math.hypot(x - from.x - nearest * along.x, y - from.y - nearest * along.y) > TOUCH;
}
