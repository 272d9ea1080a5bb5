/** The center line of a piece, or any other fold: the words along it, and the fold bracket. */
import { pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import { add, between, cross, dot, quarterTurn, scale, subtract, unit } from '../geometry/point';
import type { Edge, Piece } from '../pattern/piece';
import { pointOf } from '../pattern/piece';
import { BRACKET_DEPTH, foldBracket } from './arrows';
import type { Room } from './room';
import type { NestedPiece } from './nested-piece';
import type { Shape } from './scene';
import { blocks, readingAngle } from './sketch';
import { spelled } from './captions';

/** mm from the line, or from the bracket, to the middle of the words. */
const WORDS_OFF = 8;

/** The words and brackets of every center line and fold of a piece. */
export function centerLines(nested: NestedPiece, room: Room, size: number): readonly Shape[] {
  return nested.reference.plan.outline.filter(isCenterLine).flatMap((edge) => {
    const { start, end, inward } = innermost(nested, edge);
    const isFold = edge.kind === 'fold';
    if (isFold) room.reserve(pointBounds([start, add(end, scale(inward, BRACKET_DEPTH + 1))]));
    const words = `${spelled(edge.seam)}${isFold ? ', PLACE ON FOLD' : ''}`;
    const off = WORDS_OFF + (isFold ? BRACKET_DEPTH : 0);
    const near = add(between(start, end, 0.5), scale(inward, off));
    const placed = room.put(blocks([{ words, size }], readingAngle(subtract(end, start))), near);
    return [
      ...(isFold ? foldBracket(start, end, inward) : []),
      ...(placed === undefined ? [] : [placed]),
    ];
  });
}

function isCenterLine(edge: Edge): boolean {
  return edge.kind === 'fold' || edge.seam.startsWith('center_');
}

/**
 * The edge of the reference size, moved inward until it is inside the piece in every size: only a
 * stack point off the center spreads the center lines.
 */
function innermost(
  { sizes, reference }: NestedPiece,
  edge: Edge,
): { readonly start: Point; readonly end: Point; readonly inward: Point } {
  const middleIn = (piece: Piece): Point =>
    between(pointOf(piece, edge.from), pointOf(piece, edge.to), 0.5);
  const start = pointOf(reference, edge.from);
  const end = pointOf(reference, edge.to);
  // Seen along the edge, the piece lies to the right if its outline runs clockwise on paper.
  const toRight = quarterTurn(unit(subtract(end, start)));
  const inward = scale(toRight, runsClockwise(reference) ? 1 : -1);
  const middle = middleIn(reference);
  const depth = Math.max(
    ...sizes.map(({ piece }) => dot(subtract(middleIn(piece), middle), inward)),
  );
  return {
    start: add(start, scale(inward, depth)),
    end: add(end, scale(inward, depth)),
    inward,
  };
}

/** By the sign of the area between the corners. */
function runsClockwise(piece: Piece): boolean {
  const area = piece.plan.outline.reduce(
    (sum, { from, to }) => sum + cross(pointOf(piece, from), pointOf(piece, to)),
    0,
  );
  return area > 0;
}
