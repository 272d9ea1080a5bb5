/** The way round in which cut lines are made. */
import { cross } from '../geometry/point';
import type { Edge, Piece } from './piece';
import { outlineSegments } from './piece';

/** Whether the outline of a piece runs clockwise on paper. */
export function runsClockwise(piece: Piece): boolean {
  return outlineSegments(piece).reduce((sum, { from, to }) => sum + cross(from, to), 0) >= 0;
}

/** The piece with an outline that runs clockwise on paper; itself if it does already. */
export function clockwise(piece: Piece): Piece {
  if (runsClockwise(piece)) return piece;
  const outline = piece.plan.outline.toReversed().map(turnedRound);
  return { ...piece, plan: { ...piece.plan, outline } };
}

function turnedRound(edge: Edge): Edge {
  const ends = { from: edge.to, to: edge.from };
  return edge.kind === 'cubic'
    ? { ...edge, ...ends, leave: edge.arrive, arrive: edge.leave }
    : { ...edge, ...ends };
}
