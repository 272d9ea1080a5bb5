/** The place of a line of edges that is nearest to a point. */
import { nearestOn } from '../geometry/nearest';
import type { Point } from '../geometry/point';
import { distance } from '../geometry/point';
import { segmentAt, segmentLength, segmentPart } from '../geometry/segment';
import type { Edge, Piece } from './piece';
import { edgeSegments } from './piece';

/** A place between two named points of a line. */
export interface EdgePlace {
  readonly from: string;
  readonly to: string;
  /** Of the length from the one to the other, 0 to 1. */
  readonly share: number;
  /** mm from the start of the first edge along all of them, the legs of darts among them. */
  readonly at: number;
  /** mm from the point to it. */
  readonly away: number;
}

/** The nearest place, the first of equally near ones; undefined for a line without edges. */
export function nearestEdgePlace(
  piece: Piece,
  edges: readonly Edge[],
  p: Point,
): EdgePlace | undefined {
  let nearest: EdgePlace | undefined;
  let start = 0;
  for (const edge of edges) {
    const names = edge.kind === 'dart' ? [edge.from, edge.tip, edge.to] : [edge.from, edge.to];
    edgeSegments(piece, edge).forEach((segment, i) => {
      const long = segmentLength(segment);
      const t = nearestOn(segment, p);
      const away = distance(segmentAt(segment, t), p);
      if (nearest === undefined || away < nearest.away) {
        const passed = segmentLength(segmentPart(segment, 0, t));
        const share = long === 0 ? 0 : passed / long;
        const [from = '', to = ''] = names.slice(i);
        nearest = { from, to, share, at: start + passed, away };
      }
      start += long;
    });
  }
  return nearest;
}
