/** The turn-up of a hem: what is folded to the inside must be as wide as the skirt it lies against. */
import type { Point } from '../geometry/point';
import { add, cross, dot, scale, subtract, unit } from '../geometry/point';
import { segmentTangent } from '../geometry/segment';
import type { Edge, Piece } from './piece';
import { edgeSegments } from './piece';

/** The two ends of the lower edge of a turn-up, in the order in which the outline runs. */
export interface TurnUp {
  readonly from: Point;
  readonly to: Point;
}

/**
 * Mirrors the edges beside the hem in the hem line, down to `depth` mm below it. A side that tapers
 * toward the hem therefore spreads below it; running the taper on would leave the turn-up short by
 * twice the taper. Returns undefined for a piece without a hem.
 *
 * Common practice, no source: the allowance at a tapered hem is mirrored about the fold.
 */
export function turnUp(piece: Piece, depth: number): TurnUp | undefined {
  const { outline } = piece.plan;
  const hem = outline.findIndex((edge) => edge.seam === 'hem');
  const edge = outline[hem];
  const before = outline.at(hem - 1);
  const after = outline[(hem + 1) % outline.length];
  if (edge === undefined || before === undefined || after === undefined) return undefined;
  const start = directionAt(piece, edge, 0);
  const end = directionAt(piece, edge, 1);
  const ends = edgeSegments(piece, edge);
  const from = ends[0]?.from;
  const to = ends.at(-1)?.to;
  if (from === undefined || to === undefined) return undefined;
  return {
    from: below(from, start, scale(directionAt(piece, before, 1), -1), depth),
    to: below(to, end, directionAt(piece, after, 0), depth),
  };
}

function directionAt(piece: Piece, edge: Edge, t: 0 | 1): Point {
  const segments = edgeSegments(piece, edge);
  const segment = t === 0 ? segments[0] : segments.at(-1);
  return segment === undefined ? { x: NaN, y: NaN } : unit(segmentTangent(segment, t));
}

/** From `corner` along the mirror image of `away`, which leads into the piece, to the depth. */
function below(corner: Point, hem: Point, away: Point, depth: number): Point {
  const image = subtract(scale(hem, 2 * dot(away, hem)), away);
  const fall = Math.abs(cross(hem, image));
  return add(corner, scale(image, depth / fall));
}
