/** Seams stretch by stretch, as they are walked along each other. */
import { segmentLength } from '../geometry/segment';
import type { Piece } from './piece';
import { edgeSegments } from './piece';

/** Lengths in mm of the edges of a seam in the order of the outline, its darts sewn. */
function seamStretches(piece: Piece, seam: string): readonly number[] {
  return piece.plan.outline
    .filter((edge) => edge.seam === seam && edge.kind !== 'dart')
    .map((edge) => edgeSegments(piece, edge).reduce((sum, part) => sum + segmentLength(part), 0));
}

/**
 * The whole waist from center back over one side and the front to center back again: the lengths
 * between centers, darts and side seams. `front` and `back` are half panels whose outlines run from
 * the center to the side.
 */
export function waistStretches(front: Piece, back: Piece): readonly number[] {
  const half = [...seamStretches(back, 'waist'), ...seamStretches(front, 'waist').toReversed()];
  return [...half, ...half.toReversed()];
}
