/** A side of a seam as it is walked with a tape: its length, and what is met on the way. */
import { angleBetween, scale } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentLength, segmentTangent } from '../geometry/segment';
import type { SeamSide } from '../given/pattern';
import type { Edge, Piece } from '../pattern/piece';
import { edgeSegments, pieceNamed } from '../pattern/piece';

/** A notch, and its distance in mm from the start of the walk. */
export interface WalkedNotch {
  readonly piece: string;
  readonly name: string;
  readonly at: number;
}

/** One side of a seam, walked once. */
export interface Walk {
  /** mm, darts sewn. */
  readonly length: number;
  /** In the order of the walk. */
  readonly notches: readonly WalkedNotch[];
  /** Distances in mm of all points of the outline on the way, notches among them. */
  readonly joints: readonly number[];
  /** Angles in degrees inside the piece at the start and at the end; NaN where it is not known. */
  readonly angles: readonly [start: number, end: number];
  /** The points at which the walk starts and ends, as `piece.point`. */
  readonly ends: readonly [start: string, end: string];
}

/**
 * Walks the edges of a side one after another, each in the order of its outline. Throws a RangeError
 * if a piece is not there.
 */
export function walkSide(pieces: readonly Piece[], { edges }: SeamSide): Walk {
  let length = 0;
  const notches: WalkedNotch[] = [];
  const joints: number[] = [];
  const angles: [number, number] = [NaN, NaN];
  const ends: [string, string] = ['', ''];
  edges.forEach(({ piece: name, edge: seam }, part) => {
    const piece = pieceNamed(pieces, name);
    const { outline, notches: marked = [] } = piece.plan;
    const run = edgesInOrder(outline, seam);
    run.forEach((edge, i) => {
      if (marked.includes(edge.from) && i > 0) {
        notches.push({ piece: name, name: edge.from, at: length });
      }
      if (i > 0) joints.push(length);
      if (edge.kind === 'dart') return;
      for (const segment of edgeSegments(piece, edge)) length += segmentLength(segment);
    });
    const first = run[0];
    const last = run.at(-1);
    if (first === undefined || last === undefined) return;
    if (part === 0) {
      ends[0] = `${name}.${first.from}`;
      angles[0] = angleAt(piece, outline.at(outline.indexOf(first) - 1), first);
    }
    if (part === edges.length - 1) {
      ends[1] = `${name}.${last.to}`;
      angles[1] = angleAt(piece, last, outline[(outline.indexOf(last) + 1) % outline.length]);
    }
  });
  return { length, notches, joints, angles, ends };
}

/** The same walk from its other end. */
export function walkedBack({ length, notches, joints, angles, ends }: Walk): Walk {
  return {
    length,
    notches: notches.toReversed().map((notch) => ({ ...notch, at: length - notch.at })),
    joints: joints.toReversed().map((at) => length - at),
    angles: [angles[1], angles[0]],
    ends: [ends[1], ends[0]],
  };
}

/** The edges of a name, the first of them where the outline comes to it from another edge. */
function edgesInOrder(outline: readonly Edge[], seam: string): readonly Edge[] {
  const start = outline.findIndex(
    (edge, i) => edge.seam === seam && outline.at(i - 1)?.seam !== seam,
  );
  const turned = start <= 0 ? outline : [...outline.slice(start), ...outline.slice(0, start)];
  return turned.filter((edge) => edge.seam === seam);
}

function angleAt(piece: Piece, before: Edge | undefined, after: Edge | undefined): number {
  const arriving = before && edgeSegments(piece, before).at(-1);
  const leaving = after && edgeSegments(piece, after)[0];
  if (arriving === undefined || leaving === undefined) return NaN;
  return angleBetween(back(arriving), segmentTangent(leaving, 0));
}

function back(segment: Segment): { x: number; y: number } {
  return scale(segmentTangent(segment, 1), -1);
}
