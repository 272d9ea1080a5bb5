/** What is laid on the cloth: every copy of every piece, in the positions in which it may lie. */
import type { Point, StraightLine } from '../geometry/point';
import { point, subtract, unit } from '../geometry/point';
import { pointBounds } from '../geometry/bounds';
import type { CutPiece } from '../pattern/cut-piece';
import type { Cutting } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';
import type { Cloth, ClothName } from './cloth';
import type { Polygon } from './flat-outline';
import { flatOutline, polygonArea, unfolded } from './flat-outline';
import type { Profile } from './profile';
import { profileOf } from './profile';
import type { Spread } from './spread';
import { spreadOf } from './spread';

/** One way in which a shape may lie, its grain along y and the corner of its box at (0, 0). */
export interface Position {
  readonly corners: Polygon;
  readonly profile: Profile;
  /** The same seen across the cloth: its width runs along it, and its height across. */
  readonly sideways: Profile;
  readonly grain: StraightLine;
  /** Face down: the image of the piece as drawn. */
  readonly mirrored: boolean;
  /** Upside down: half a turn from the piece as drawn. */
  readonly turned: boolean;
}

/** One copy of a piece that must be laid. */
export interface LayShape {
  readonly piece: CutPiece;
  /** Which copy of the piece it is, from 1, and how many there are on the cloth. */
  readonly copy: number;
  readonly copies: number;
  /** Its edge lies on the fold of the cloth. */
  readonly onFold: boolean;
  /** Layers of cloth that it is cut from: on folded cloth 1 only where it is cut once. */
  readonly layers: 1 | 2;
  /** Square mm of one layer. */
  readonly area: number;
  /** At least one, the piece as drawn first; none if its fold edge does not lie along the grain. */
  readonly positions: readonly Position[];
  /** How far it reaches across the cloth over its length, and along it over its width. */
  readonly across: Spread;
  readonly along: Spread;
}

/** Every shape that the pieces need from a cloth, piece by piece. */
export function layShapes(
  pieces: readonly CutPiece[],
  name: ClothName,
  cloth: Pick<Cloth, 'fold' | 'nap'>,
): readonly LayShape[] {
  return pieces.flatMap((piece) =>
    piece.piece.plan.cuttings
      .filter((cutting) => cutting.cloth === name)
      .flatMap((cutting) => copiesOf(piece, cutting, cloth)),
  );
}

function copiesOf(
  piece: CutPiece,
  { count, onFold }: Cutting,
  { fold, nap }: Pick<Cloth, 'fold' | 'nap'>,
): readonly LayShape[] {
  const half = flatOutline(piece.cut);
  const folded = fold !== 'open';
  const corners = onFold && !folded && piece.fold !== undefined ? unfolded(half, piece.fold) : half;
  const copies = onFold || !folded ? count : Math.ceil(count / 2);
  const turns = nap === 'with' ? [false] : [false, true];
  const alongFold = onFold && folded;
  const lying = (faces: readonly boolean[]): readonly Position[] => {
    const ways = turns.flatMap((turned) => faces.map((mirrored) => ({ turned, mirrored })));
    return different(
      alongFold
        ? onTheFold(piece, corners, turns)
        : ways.map((way) => positioned(piece, corners, way)),
    );
  };
  // Of a pair on open cloth each second copy is the image; from two layers either face is up, as one
  // layer gives the piece and the other its image.
  const faceUp = lying([false]);
  const other = onFold || count === 1 ? faceUp : lying(folded ? [false, true] : [true]);
  const area = polygonArea(corners);
  // However it is turned or mirrored, a shape is as wide and as long.
  const first = faceUp[0]?.corners ?? [];
  const across = spreadOf(first);
  const along = spreadOf(first.map(swapped));
  return Array.from({ length: copies }, (_, i) => {
    const layers = folded && (onFold || 2 * i + 2 <= count) ? 2 : 1;
    const isImage = folded ? layers === 2 : i % 2 === 1;
    return {
      piece,
      copy: i + 1,
      copies,
      onFold: alongFold,
      layers,
      area,
      positions: isImage ? other : faceUp,
      across,
      along,
    };
  });
}

function swapped({ x, y }: Point): Point {
  return point(y, x);
}

interface Way {
  readonly mirrored: boolean;
  readonly turned: boolean;
}

/** The ways of a half piece in which its fold edge comes to lie at x = 0. */
function onTheFold(
  piece: CutPiece,
  corners: Polygon,
  turns: readonly boolean[],
): readonly Position[] {
  const { fold } = piece;
  if (fold === undefined) return [];
  const [from, to] = [fold.from, fold.to].map(alongGrain(piece));
  if (from === undefined || to === undefined || Math.abs(from.x - to.x) > SAME_PLACE) return [];
  const box = pointBounds(corners.map(alongGrain(piece)));
  const right = box.right - from.x < from.x - box.left;
  return turns.map((turned) => positioned(piece, corners, { turned, mirrored: turned !== right }));
}

function positioned(piece: CutPiece, corners: Polygon, { mirrored, turned }: Way): Position {
  const turn = alongGrain(piece);
  const across = mirrored === turned ? 1 : -1;
  const along = turned ? -1 : 1;
  const lying = (p: Point): Point => {
    const { x, y } = turn(p);
    return point(across * x, along * y);
  };
  const flat = corners.map(lying);
  const { left, top } = pointBounds(flat);
  const zero = point(left, top);
  const placed = flat.map((p) => subtract(p, zero));
  const grain = {
    from: subtract(lying(piece.grain.from), zero),
    to: subtract(lying(piece.grain.to), zero),
  };
  return {
    corners: placed,
    profile: profileOf(placed),
    sideways: profileOf(placed.map(swapped)),
    grain,
    mirrored,
    turned,
  };
}

/** The turn by 90 degrees at most that brings the grain of a piece along y. */
function alongGrain({ grain }: CutPiece): (p: Point) => Point {
  const way = unit(subtract(grain.to, grain.from));
  const down = way.y < -SAME_PLACE || (Math.abs(way.y) <= SAME_PLACE && way.x < 0) ? -1 : 1;
  const { x: sin, y: cos } = { x: down * way.x, y: down * way.y };
  return ({ x, y }) => point(x * cos - y * sin, x * sin + y * cos);
}

/** Without positions that look the same, such as a strip face up and face down. */
function different(positions: readonly Position[]): readonly Position[] {
  return positions.filter(
    ({ profile }, i) => !positions.slice(0, i).some((other) => alike(profile, other.profile)),
  );
}

/** Whether two profiles are the same but for errors of computing. */
export function alike(a: Profile, b: Profile): boolean {
  return (
    a.slices.length === b.slices.length &&
    a.slices.every((slice, i) => {
      const other = b.slices[i];
      if (other === undefined) return false;
      return [
        slice.start - other.start,
        slice.near - other.near,
        slice.far - other.far,
        slice.end - other.end,
      ].every((gap) => Math.abs(gap) <= SAME_PLACE);
    })
  );
}
