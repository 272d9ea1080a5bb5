/** Which points of a piece a ruler reads off, and how all others go with them. */
import type { Point } from '../geometry/point';
import { add, distance, subtract } from '../geometry/point';
import { dartCap } from '../pattern/dart-cap';
import type { DartEdge, Edge, Piece, PiecePlan } from '../pattern/piece';

/** The points of a plan that no ruler reads off, by what finds them; points are places in the plan. */
interface CarriedPoints {
  /** Handles, and the end of a curve with which each goes, so that the curve keeps its direction there. */
  readonly handles: ReadonlyMap<number, number>;
  /** Where the fold of a closed dart ends, which is found by folding. */
  readonly folds: ReadonlyMap<number, DartEdge>;
}

/** Handles go with their ends; folds of darts are folded anew. */
function carriedPoints(plan: PiecePlan): CarriedPoints {
  const at = (name: string): number => plan.index.get(name) ?? -1;
  const curves = [...plan.outline, ...(plan.cutLine ?? [])].filter(isCurve);
  const folds = plan.marks.flatMap(({ name, through: [from, fold = ''] }) => {
    const dart = plan.darts.find((edge) => edge.from === from);
    return name === 'dart-fold' && dart !== undefined ? [[at(fold), dart] as const] : [];
  });
  return {
    handles: new Map(
      curves.flatMap(({ from, leave, arrive, to }) => [
        [at(leave), at(from)],
        [at(arrive), at(to)],
      ]),
    ),
    folds: new Map(folds),
  };
}

function isCurve(edge: Edge): edge is Edge & { readonly kind: 'cubic' } {
  return edge.kind === 'cubic';
}

/** A coordinate of a point that a ruler reads off: places of its piece and in the plan. */
export interface RuledCoordinate {
  readonly piece: number;
  readonly point: number;
  readonly axis: 'x' | 'y';
}

/** What a ruler reads off on a pattern, and what goes with it. */
export interface RuledPattern {
  /** The y of a point comes right after its x. */
  readonly coordinates: readonly RuledCoordinate[];
  /** `places[piece][point]` is where its x stands among the coordinates; -1 for what is carried. */
  readonly places: readonly (readonly number[])[];
  readonly carried: readonly CarriedPoints[];
}

/** Corners, curve points, notches, ends and tips of darts, and whatever else is no handle and no fold. */
export function ruledPattern(pieces: readonly Piece[]): RuledPattern {
  const coordinates: RuledCoordinate[] = [];
  const carried = pieces.map(({ plan }) => carriedPoints(plan));
  const places = pieces.map(({ plan }, piece) =>
    plan.pointNames.map((name, point) => {
      if (plan.handles.has(name) || carried[piece]?.folds.has(point)) return -1;
      return coordinates.push({ piece, point, axis: 'x' }, { piece, point, axis: 'y' }) - 2;
    }),
  );
  return { coordinates, places, carried };
}

/** The pieces of a size with their ruled coordinates moved by `moves` mm from the base. */
export function movedPieces(
  base: readonly Piece[],
  exact: readonly Piece[],
  { places, carried }: RuledPattern,
  moves: readonly number[],
): readonly Piece[] {
  return exact.map((piece, p) => {
    const from = base[p]?.points ?? [];
    const points = piece.points.map((own, i): Point => {
      const c = places[p]?.[i] ?? -1;
      if (c < 0) return own;
      return add(from[i] as Point, { x: moves[c] as number, y: moves[c + 1] as number });
    });
    return withCarried(piece, points, carried[p] as CarriedPoints);
  });
}

/** What is carried goes with the ruled points; a handle without a curve stays where it is. */
function withCarried(
  exact: Piece,
  ruled: readonly Point[],
  { handles, folds }: CarriedPoints,
): Piece {
  const { plan } = exact;
  const places = [...ruled];
  for (const [handle, end] of handles) {
    const [own, from, to] = [exact.points[handle], exact.points[end], places[end]];
    if (own && from && to) places[handle] = add(own, subtract(to, from));
  }
  const moved = { plan, points: places };
  if (folds.size === 0) return moved;
  return {
    plan,
    points: places.map((own, i) => {
      const dart = folds.get(i);
      return dart === undefined ? own : dartCap(moved, dart, pressedTo(exact, dart, own));
    }),
  };
}

/** To which side the dart is pressed, as its own fold shows. */
function pressedTo(exact: Piece, dart: DartEdge, fold: Point): 'center' | 'side' {
  const off = (pressed: 'center' | 'side'): number => distance(dartCap(exact, dart, pressed), fold);
  return off('center') <= off('side') ? 'center' : 'side';
}
