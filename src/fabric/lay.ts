/** A lay: where the pieces lie on a length of cloth, and how long that length is. */
import type { Point, StraightLine } from '../geometry/point';
import { add, point } from '../geometry/point';
import { pointBounds } from '../geometry/bounds';
import type { Cloth } from './cloth';
import type { Polygon } from './flat-outline';
import { imageIn, unfolded } from './flat-outline';
import type { Placed } from './set-down';
import type { LayShape, Position } from './shapes';

/**
 * A piece on the cloth, in mm: x across it, from the fold or on open cloth from the left edge, and
 * y along it from its end.
 */
export interface Placement
  extends Omit<LayShape, 'positions' | 'trapezoids'>, Pick<Position, 'mirrored' | 'turned'> {
  readonly corners: Polygon;
  readonly grain: StraightLine;
}

/** Lengths in mm that no lay can be shorter than: see `lengthBound` and `areaBound`. */
export interface LengthBounds {
  readonly area: number;
  /** The best that is known, never below `area`. */
  readonly best: number;
}

/** Pieces placed on a cloth without overlap, and what that takes. */
export interface Lay {
  readonly cloth: Cloth;
  readonly placements: readonly Placement[];
  /** mm of cloth taken, without any allowance. */
  readonly length: number;
  /** What no lay of these pieces on this cloth can be shorter than. */
  readonly bounds: LengthBounds;
  /** Square mm of the pieces, all layers counted. */
  readonly area: number;
  /** Area of the pieces as a share of the cloth taken, selvages included. */
  readonly utilization: number;
}

/** The piece that cannot be laid on a cloth, and why. */
export interface NoLay {
  readonly piece: string;
  /** `grain`: the edge for the fold does not run along the grain. */
  readonly cause: 'width' | 'grain';
  /** mm across the grain that the piece takes. */
  readonly needed: number;
  /** mm that can be cut: of half the cloth where it is folded. */
  readonly given: number;
}

/** True where the pieces do go on the cloth. */
export function isLay(lay: Lay | NoLay): lay is Lay {
  return 'placements' in lay;
}

/** A lay of placements that lie on the cloth, with its figures. */
export function layOf(placements: readonly Placement[], cloth: Cloth, bounds: LengthBounds): Lay {
  const length = Math.max(0, ...placements.map(({ corners }) => pointBounds(corners).bottom));
  const area = placements.reduce((sum, p) => sum + p.layers * p.area, 0);
  const utilization = length === 0 ? 0 : area / (cloth.width * length);
  return { cloth, placements, length, bounds, area, utilization };
}

/** A shape that was set down, in the coordinates of the cloth. */
export function placement({ shape, position, x, y }: Placed, cloth: Cloth): Placement {
  const corner = point(cloth.fold === 'folded' ? x : x + cloth.selvage, y);
  const { piece, copy, copies, onFold, layers, area } = shape;
  const { mirrored, turned, corners, grain } = position;
  return {
    piece,
    copy,
    copies,
    onFold,
    layers,
    area,
    mirrored,
    turned,
    corners: corners.map((p) => add(p, corner)),
    grain: { from: add(grain.from, corner), to: add(grain.to, corner) },
  };
}

/** The placements of a lay on folded cloth after the cloth is opened: every piece in one layer. */
export function opened({ cloth, placements }: Lay): readonly Placement[] {
  const middle = point(cloth.width / 2, 0);
  return placements.flatMap((placed): readonly Placement[] => {
    const { corners, copy, copies, layers, area } = placed;
    if (placed.onFold) {
      const whole = unfolded(corners, FOLD).map((p) => add(p, middle));
      return [
        {
          ...moved(placed, (p) => add(p, middle)),
          corners: whole,
          onFold: false,
          layers: 1,
          area: 2 * area,
        },
      ];
    }
    const right = moved(placed, (p) => add(p, middle));
    const left = moved(placed, (p) => add(imageIn(p, FOLD), middle));
    const both = [right, { ...left, mirrored: !placed.mirrored }];
    // A piece that is cut once is cut face up.
    const kept = layers === 2 ? both : both.filter((side) => !side.mirrored);
    return kept.map((side, i) => ({
      ...side,
      layers: 1,
      copy: 2 * copy - 1 + i,
      copies: 2 * copies,
    }));
  });
}

/** The fold of folded cloth. */
const FOLD: StraightLine = { from: point(0, 0), to: point(0, 1) };

function moved(placed: Placement, to: (p: Point) => Point): Placement {
  const { from, to: end } = placed.grain;
  return { ...placed, corners: placed.corners.map(to), grain: { from: to(from), to: to(end) } };
}
