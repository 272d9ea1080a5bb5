/** Base plus rules for a piece of which only some points have rules. */
import type { Point } from '../geometry/point';
import { splineHandles } from '../geometry/spline';
import type { Piece } from '../pattern/piece';
import type { Follower, PatternPiece, ClosedPath } from '../pattern/pattern';

/** What moves a piece: its ruled points, and in order of dependence all others. */
export interface Mover {
  readonly piece: PatternPiece;
  readonly followers: readonly Follower[];
}

/**
 * Decides for every point without a rule what it moves with. Along the outline that are the ruled
 * points before and after it, by its share of the way between them with darts closed; so an unruled
 * dart moves as a whole, tip included. A piece without any rule does not move.
 */
export function moverOf(piece: PatternPiece, ruled: ReadonlySet<number>): Mover {
  const along = [
    ...pathFollowers(piece.path, ruled),
    ...(piece.cutPath === undefined ? [] : pathFollowers(piece.cutPath, ruled)),
  ];
  const beside = piece.followers.filter(({ point }) => !ruled.has(point));
  return { piece, followers: [...along, ...beside] };
}

function pathFollowers(
  { stops: path, around }: ClosedPath,
  ruled: ReadonlySet<number>,
): readonly Follower[] {
  const stops = path.filter(({ point }) => ruled.has(point));
  const [first] = stops;
  const last = stops.at(-1);
  if (first === undefined || last === undefined) return [];
  const followers: Follower[] = [];
  let before = { point: last.point, at: last.at - around };
  let next = 0;
  for (const { point, at } of path) {
    if (ruled.has(point)) {
      before = { point, at };
      next++;
      continue;
    }
    const after = stops[next] ?? { point: first.point, at: first.at + around };
    const gap = after.at - before.at;
    followers.push({
      point,
      from: before.point,
      to: after.point,
      share: gap === 0 ? 0 : (at - before.at) / gap,
    });
  }
  return followers;
}

/**
 * The piece with its ruled points moved by `moves` (mm, on the paper) and all others after them.
 * Handles of splines are found anew, with the spans of the base.
 */
export function movedPiece(
  { piece, followers }: Mover,
  moves: Iterable<readonly [point: number, move: Point]>,
): Piece {
  const { base, splines } = piece;
  const { length } = base.points;
  const dx = new Float64Array(length);
  const dy = new Float64Array(length);
  for (const [i, { x, y }] of moves) {
    dx[i] = x;
    dy[i] = y;
  }
  for (const { point, from, to, share } of followers) {
    dx[point] = mixed(dx, from, to, share);
    dy[point] = mixed(dy, from, to, share);
  }
  const points = base.points.map(({ x, y }, i) => ({
    x: x + (dx[i] as number),
    y: y + (dy[i] as number),
  }));
  for (const { points: through, handles, spans } of splines) {
    const found = splineHandles(
      through.map((i) => points[i] as Point),
      spans,
    );
    handles.forEach((handle, i) => (points[handle] = found[i] as Point));
  }
  return { plan: base.plan, points };
}

/** Exactly the one end's move where both ends move alike, and at the ends of the way. */
function mixed(moves: Float64Array, from: number, to: number, share: number): number {
  const start = moves[from] as number;
  return start + ((moves[to] as number) - start) * share;
}
