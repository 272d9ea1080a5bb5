/** A piece on the fold drawn whole: its outline and what lies in it, on both sides of the fold. */
import type { Polygon } from '../fabric/flat-outline';
import { imageIn, polygonArea, unfolded } from '../fabric/flat-outline';
import type { Point, StraightLine } from '../geometry/point';
import { cross, distance, subtract, unit } from '../geometry/point';
import type { CutPiece } from '../pattern/cut-piece';
import type { Piece } from '../pattern/piece';
import { outlineSegments, pointOf } from '../pattern/piece';
import { COMPUTED_PLACE, SAME_PLACE } from '../tolerance';

/** The fold of a piece that can be opened along it. */
export interface Unfolding {
  readonly fold: StraightLine;
  /** A closed outline of half a piece as that of the whole one. */
  readonly whole: (half: Polygon) => Polygon;
  /** The image of what lies in the piece; undefined for what lies on the fold, and is there already. */
  readonly image: (points: readonly Point[]) => readonly Point[] | undefined;
}

/** Whether a piece has an edge on the fold. */
export function isOnFold({ plan }: Piece): boolean {
  return plan.outline.some(({ kind }) => kind === 'fold');
}

/** From end to end of all edges on the fold; undefined where they are not on one line, or where there are none. */
function foldOf(piece: Piece): StraightLine | undefined {
  const places = piece.plan.outline
    .filter(({ kind }) => kind === 'fold')
    .flatMap(({ from, to }) => [pointOf(piece, from), pointOf(piece, to)]);
  const [from] = places;
  if (from === undefined) return undefined;
  const to = places.reduce((a, b) => (distance(b, from) > distance(a, from) ? b : a));
  const along = unit(subtract(to, from));
  const isStraight = places.every(
    (p) => Math.abs(cross(along, subtract(p, from))) <= COMPUTED_PLACE,
  );
  return isStraight ? { from, to } : undefined;
}

/**
 * How a piece is opened along its fold; undefined where it has none, or where the whole would not be twice the
 * half, as with a fold that is not straight.
 */
export function unfoldingOf(piece: Piece, cut: CutPiece | undefined): Unfolding | undefined {
  const fold = foldOf(piece);
  if (fold === undefined) return undefined;
  const halves = [outlineSegments(piece), ...(cut === undefined ? [] : [cut.cut])];
  const opens = halves.every((segments) => {
    // Chords of all that is not on the fold have their images, so corners tell as much.
    const corners = segments.map(({ from }) => from);
    const off = polygonArea(unfolded(corners, fold)) - 2 * polygonArea(corners);
    return Math.abs(off) <= COMPUTED_PLACE * distance(fold.from, fold.to);
  });
  if (!opens) return undefined;
  return {
    fold: cut?.fold ?? fold,
    whole: (half) => unfolded(half, fold),
    image: (points) => {
      const images = points.map((p) => imageIn(p, fold));
      const isThere = images.every((image) => points.some((p) => distance(p, image) <= SAME_PLACE));
      return isThere ? undefined : images;
    },
  };
}
