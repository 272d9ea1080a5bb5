/** Places along a seam by the length of thread to them, as they meet when it is sewn. */
import { cubicParameterAtLength } from '../geometry/cubic';
import type { Point } from '../geometry/point';
import { quarterTurn, scale, unit } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { reversed, segmentAt, segmentLength, segmentTangent } from '../geometry/segment';
import { runsClockwise } from './clockwise';
import type { Piece } from './piece';
import { edgeSegments } from './piece';

/** A place on the sewing line, and the unit vector from it out of the piece. */
export interface SeamPlace {
  readonly at: Point;
  readonly outward: Point;
}

/**
 * The place `length` mm before the end of a seam, which is the end that comes last in the outline;
 * undefined if the seam is shorter, or not there. Darts do not count.
 */
export function placeBeforeEnd(piece: Piece, seam: string, length: number): SeamPlace | undefined {
  let left = length;
  for (const segment of seamSegments(piece, seam).toReversed()) {
    const long = segmentLength(segment);
    if (left > long) {
      left -= long;
      continue;
    }
    const back = reversed(segment);
    const t =
      back.kind === 'cubic' ? cubicParameterAtLength(back, left) : long === 0 ? 0 : left / long;
    return { at: segmentAt(back, t), outward: scale(outwardAt(piece, back, t), -1) };
  }
  return undefined;
}

/** mm along a seam from one of its joints to its end; undefined if it has no such joint. */
export function lengthToEnd(piece: Piece, seam: string, joint: string): number | undefined {
  const edges = piece.plan.outline.filter((edge) => edge.seam === seam && edge.kind !== 'dart');
  const first = edges.findIndex(({ from }) => from === joint);
  if (first < 0) return undefined;
  return edges
    .slice(first)
    .flatMap((edge) => edgeSegments(piece, edge))
    .reduce((sum, segment) => sum + segmentLength(segment), 0);
}

/** The unit vector out of the piece at a place of a segment that runs as its outline does. */
export function outwardAt(piece: Piece, segment: Segment, t: number): Point {
  const toRight = quarterTurn(unit(segmentTangent(segment, t)));
  return scale(toRight, runsClockwise(piece) ? -1 : 1);
}

function seamSegments(piece: Piece, seam: string): readonly Segment[] {
  return piece.plan.outline
    .filter((edge) => edge.seam === seam && edge.kind !== 'dart')
    .flatMap((edge) => edgeSegments(piece, edge));
}
