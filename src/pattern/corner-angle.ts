/** Angles of an outline at its corners. */
import { angleBetween, scale } from '../geometry/point';
import { segmentTangent } from '../geometry/segment';
import type { Edge, Piece } from './piece';
import { edgeSegments } from './piece';

/**
 * Angle in degrees, 0 to 180, between the two edges that meet in a point; NaN if the point is not a
 * corner of the outline.
 */
export function cornerAngle(piece: Piece, name: string): number {
  const before = piece.plan.outline.find((edge) => edge.to === name);
  const after = piece.plan.outline.find((edge) => edge.from === name);
  return angleBetweenEdges(piece, before, after);
}

/** The same between an edge and the one after it; NaN without either. */
export function angleBetweenEdges(
  piece: Piece,
  before: Edge | undefined,
  after: Edge | undefined,
): number {
  const arriving = before && edgeSegments(piece, before).at(-1);
  const leaving = after && edgeSegments(piece, after)[0];
  if (arriving === undefined || leaving === undefined) return NaN;
  return angleBetween(scale(segmentTangent(arriving, 1), -1), segmentTangent(leaving, 0));
}
