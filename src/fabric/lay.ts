/** A lay: where the pieces lie on a length of cloth, and how long that length is. */
import { pointBounds } from '../geometry/bounds';
import type { Point, StraightLine } from '../geometry/point';
import { add, point } from '../geometry/point';
import { SAME_PLACE } from '../tolerance';
import type { Cloth } from './cloth';
import type { Placed } from './fill';
import type { Polygon } from './flat-outline';
import { imageIn, unfolded } from './flat-outline';
import type { Folding, Zone } from './folding';
import { foldingOf } from './folding';
import type { LayShape, Position } from './shapes';

/**
 * A piece on the cloth, in mm: x across it as in folding.ts, which is below 0 only on the opened end
 * of folded cloth, and y along it from its end.
 */
export interface Placement
  extends
    Pick<LayShape, 'piece' | 'copy' | 'copies' | 'onFold' | 'layers' | 'area'>,
    Pick<Position, 'mirrored' | 'turned'> {
  readonly zone: Zone;
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
  readonly folding: Folding;
  readonly placements: readonly Placement[];
  /** mm of cloth taken, without any allowance. */
  readonly length: number;
  /** mm from the beginning of the cloth that lie folded; what follows lies open. */
  readonly folded: number;
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
  /** mm that can be cut: of one flap where the cloth is folded. */
  readonly given: number;
}

/** True where the pieces do go on the cloth. */
export function isLay(lay: Lay | NoLay): lay is Lay {
  return 'placements' in lay;
}

/** Pieces where they lie on a cloth folded so. */
export type Placements = Pick<Lay, 'placements' | 'folding'>;

/** A lay of placements that lie on the cloth, with its figures. */
export function layOf(
  { placements, folding }: Placements,
  cloth: Cloth,
  bounds: LengthBounds,
): Lay {
  const length = endOf(placements);
  const opened = placements.filter(({ zone }) => zone === 'opened-end');
  const folded = cloth.fold === 'open' ? 0 : Math.min(length, ...opened.map(beginOf));
  const area = placements.reduce((sum, p) => sum + p.layers * p.area, 0);
  const utilization = length === 0 ? 0 : area / (cloth.width * length);
  return { cloth, folding, placements, length, folded, bounds, area, utilization };
}

function beginOf({ corners }: Placement): number {
  return pointBounds(corners).top;
}

/** mm from the end of the cloth to where the last piece ends. */
export function endOf(placements: readonly Placement[]): number {
  return Math.max(0, ...placements.map(({ corners }) => pointBounds(corners).bottom));
}

/** Shapes of a fill where they lie on the cloth; `on` says where on it the fill was made. */
export function placed(
  fill: readonly Placed[],
  on: 'open' | 'fold' | 'strip' | 'opened-end',
  { selvage }: Cloth,
  { flap, across }: Folding,
  from = 0,
): readonly Placement[] {
  const left = { open: selvage, fold: 0, strip: flap, 'opened-end': selvage - flap }[on];
  return fill.map(({ shape, position, lane, x, y }) => {
    const { piece, copy, copies, onFold, layers, area } = shape;
    const { mirrored, turned } = position;
    const corner = point(left + x, from + y);
    const zone = on !== 'fold' ? on : layers === 1 ? 'rest' : lane === 0 ? 'fold' : 'second-fold';
    const own: Placement = {
      ...{ piece, copy, copies, onFold, layers, area, mirrored, turned, zone },
      corners: position.corners.map((p) => add(p, corner)),
      grain: { from: add(position.grain.from, corner), to: add(position.grain.to, corner) },
    };
    // The second flap is the first one's image.
    return lane === 0 ? own : image(own, uprightAt(across / 2));
  });
}

/** The same pieces on cloth that is no narrower, folded to leave as wide a strip. */
export function relaid({ placements, folding }: Placements, cloth: Cloth): Placements {
  if (cloth.fold === 'open') return { placements, folding: foldingOf(cloth, 0) };
  const next = foldingOf(cloth, folding.strip);
  const wider = next.flap - folding.flap;
  const right = (own: Placement): number => {
    if (own.zone === 'strip') return wider;
    if (own.zone === 'opened-end') return -wider;
    return isOnSecond(own, folding) ? next.across - folding.across : 0;
  };
  return { folding: next, placements: placements.map((own) => moved(own, right(own))) };
}

/** Whether a piece lies on the second flap, doubled or among what is. */
function isOnSecond({ zone, corners }: Placement, { flap, across }: Folding): boolean {
  if (zone === 'rest') return pointBounds(corners).left > Math.max(flap, across / 2) - SAME_PLACE;
  return zone === 'second-fold';
}

/** A lay on folded cloth after the cloth is opened: every piece in one layer. */
export function opened({ cloth, placements, folding }: Lay): Placements {
  const { flap, across } = folding;
  const flat = placements.flatMap((own): readonly Placement[] => {
    const axis = uprightAt(isOnSecond(own, folding) ? across : 0);
    const { copy, copies, area, layers } = own;
    // What is cut once and lies face down is cut from the upper layer.
    const isUpper = own.zone === 'rest' && own.mirrored;
    if (layers === 1) return [{ ...moved(isUpper ? image(own, axis) : own, flap), zone: 'open' }];
    const single = { zone: 'open', layers: 1 } as const;
    if (own.onFold) {
      const whole = { ...own, corners: unfolded(own.corners, axis), area: 2 * area };
      return [{ ...moved(whole, flap), ...single, onFold: false }];
    }
    return [own, image(own, axis)].map((side, i) => ({
      ...moved(side, flap),
      ...single,
      copy: 2 * copy - 1 + i,
      copies: 2 * copies,
    }));
  });
  return { placements: flat, folding: foldingOf({ ...cloth, fold: 'open' }, 0) };
}

function uprightAt(x: number): StraightLine {
  return { from: point(x, 0), to: point(x, 1) };
}

function image(own: Placement, axis: StraightLine): Placement {
  return { ...mapped(own, (p) => imageIn(p, axis)), mirrored: !own.mirrored };
}

function moved(own: Placement, right: number): Placement {
  return right === 0 ? own : mapped(own, (p) => add(p, point(right, 0)));
}

function mapped(own: Placement, to: (p: Point) => Point): Placement {
  const { from, to: end } = own.grain;
  return { ...own, corners: own.corners.map(to), grain: { from: to(from), to: to(end) } };
}
