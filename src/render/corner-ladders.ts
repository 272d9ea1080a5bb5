/** Chooses the corners of a nest at which its sizes are labeled: where their lines lie apart. */
import { pointBounds } from '../geometry/bounds';
import type { Point } from '../geometry/point';
import type { Edge, Piece } from '../pattern/piece';
import { edgeSegments, pointOf } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';
import type { LadderWay } from './ladder';
import type { NestedPiece } from './nested-piece';
import { CORNER, turn } from './piece-lines';

/** A corner by the name of its point, and the way its leaders take. */
export interface LadderCorner extends LadderWay {
  readonly name: string;
}

/**
 * Share of a piece's height from its upper or lower end within which a corner is at that end.
 * No tolerance: it places words.
 */
const AT_END = 0.3;

interface Candidate {
  readonly name: string;
  readonly spreadX: number;
  readonly spreadY: number;
  readonly middle: Point;
}

/**
 * The corner that lies farthest apart at the upper end and the one at the lower end, the farther
 * of them first. An end where all sizes coincide is left out, unless both do.
 */
export function ladderCorners(nested: NestedPiece): readonly LadderCorner[] {
  const { box } = nested;
  const height = box.bottom - box.top;
  const corners = cornerNames(nested.reference).map((name) => candidate(nested, name));
  const upper = farthest(corners.filter(({ middle }) => middle.y < box.top + AT_END * height));
  const lower = farthest(corners.filter(({ middle }) => middle.y > box.bottom - AT_END * height));
  const chosen = [
    ...(lower === undefined ? [] : [{ corner: lower, leave: 'down' as const }]),
    ...(upper === undefined ? [] : [{ corner: upper, leave: 'up' as const }]),
  ];
  chosen.sort((a, b) => spread(b.corner) - spread(a.corner));
  const apart = chosen.filter(({ corner }) => spread(corner) > SAME_PLACE);
  return (apart.length > 0 ? apart : chosen.slice(0, 1)).map(({ corner, leave }) => ({
    name: corner.name,
    leave: corner.spreadY > corner.spreadX ? 'sideways' : leave,
    side: corner.middle.x < (box.left + box.right) / 2 ? 'left' : 'right',
  }));
}

/** Names of the points at which the outline clearly turns, those of darts left out. */
function cornerNames(piece: Piece): readonly string[] {
  const { outline } = piece.plan;
  return outline.flatMap((edge, i) => {
    const before = outline.at(i - 1);
    if (before === undefined || edge.kind === 'dart' || before.kind === 'dart') return [];
    return turnBetween(piece, before, edge) < CORNER ? [] : [edge.from];
  });
}

function turnBetween(piece: Piece, before: Edge, after: Edge): number {
  const arriving = edgeSegments(piece, before).at(-1);
  const leaving = edgeSegments(piece, after)[0];
  return arriving === undefined || leaving === undefined ? 0 : turn(arriving, leaving);
}

function candidate({ sizes }: NestedPiece, name: string): Candidate {
  const { left, right, top, bottom } = pointBounds(sizes.map(({ piece }) => pointOf(piece, name)));
  return {
    name,
    spreadX: right - left,
    spreadY: bottom - top,
    middle: { x: (left + right) / 2, y: (top + bottom) / 2 },
  };
}

function spread({ spreadX, spreadY }: Candidate): number {
  return Math.max(spreadX, spreadY);
}

/** Of corners equally far apart the one on the right, where the labels read away from the piece. */
function farthest(corners: readonly Candidate[]): Candidate | undefined {
  return corners.reduce<Candidate | undefined>((best, corner) => {
    if (best === undefined) return corner;
    const gain = spread(corner) - spread(best);
    if (Math.abs(gain) > SAME_PLACE) return gain > 0 ? corner : best;
    return corner.middle.x > best.middle.x ? corner : best;
  }, undefined);
}
