/** A side of a seam as it is walked with a tape: its length, and what is met on the way. */
import { distance } from '../geometry/point';
import { segmentLength } from '../geometry/segment';
import { angleBetweenEdges } from '../pattern/corner-angle';
import { nearestEdgePlace } from '../pattern/edge-place';
import type { SeamSide } from '../pattern/seam-pair';
import type { Edge, NotchPlace, Piece } from '../pattern/piece';
import { edgeSegments, pieceNamed, pointOf } from '../pattern/piece';
import { SEWN_PLACE } from '../tolerance';

/** A notch, join or dart, and its distance in mm from the start of the walk. */
export interface WalkedNotch {
  readonly piece: string;
  readonly name: string;
  readonly at: number;
  /** Of a join, the point at which the edge before it ends, as `piece.point`. */
  readonly endOf?: string;
}

/** One side of a seam, walked once. */
export interface Walk {
  /** mm, darts sewn. */
  readonly length: number;
  /** In the order of the walk. */
  readonly notches: readonly WalkedNotch[];
  /** Where one edge of the side ends and the next begins. */
  readonly joins: readonly WalkedNotch[];
  /** Where darts are sewn. */
  readonly darts: readonly WalkedNotch[];
  /** Distances in mm of all points of the outline on the way, notches among them. */
  readonly joints: readonly number[];
  /** Angles in degrees inside the piece at the start and at the end; NaN where it is not known. */
  readonly angles: readonly [start: number, end: number];
  /** The points at which the walk starts and ends, as `piece.point`. */
  readonly ends: readonly [start: string, end: string];
  /** The edges of the outline that meet it at its start and at its end, as `piece.edge`. */
  readonly beside: readonly [start: string, end: string];
}

/**
 * Walks the edges of a side one after another, each in the order of its outline, or against it where
 * the side says so. Throws a RangeError if a piece is not there.
 */
export function walkSide(pieces: readonly Piece[], { edges }: SeamSide): Walk {
  const parts = edges.map((edge) => {
    const walk = walkEdge(pieceNamed(pieces, edge.piece), edge.edge);
    return edge.back ? walkedBack(walk) : walk;
  });
  return parts.reduce(joined);
}

/** One walk after another; where they meet is a join. */
function joined(first: Walk, second: Walk): Walk {
  const on = (found: readonly WalkedNotch[]): readonly WalkedNotch[] =>
    found.map((own) => ({ ...own, at: own.at + first.length }));
  const [piece = '', name = ''] = second.ends[0].split('.');
  return {
    length: first.length + second.length,
    notches: [...first.notches, ...on(second.notches)],
    joins: [
      ...first.joins,
      { piece, name, at: first.length, endOf: first.ends[1] },
      ...on(second.joins),
    ],
    darts: [...first.darts, ...on(second.darts)],
    joints: [...first.joints, ...second.joints.map((at) => at + first.length)],
    angles: [first.angles[0], second.angles[1]],
    ends: [first.ends[0], second.ends[1]],
    beside: [first.beside[0], second.beside[1]],
  };
}

function walkEdge(piece: Piece, seam: string): Walk {
  const { outline, name, notches: rules } = piece.plan;
  const marked = new Set(rules.flatMap(({ place }) => jointMarked(place, seam)));
  let length = 0;
  const notches = sewnNotches(piece, seam);
  const darts: WalkedNotch[] = [];
  const joints: number[] = [];
  const run = edgesInOrder(outline, seam);
  run.forEach((edge, i) => {
    if (i > 0) {
      joints.push(length);
      if (marked.has(edge.from)) notches.push({ piece: name, name: edge.from, at: length });
    }
    if (edge.kind === 'dart') {
      darts.push({ piece: name, name: edge.name, at: length });
      return;
    }
    for (const segment of edgeSegments(piece, edge)) length += segmentLength(segment);
  });
  const [first, last] = [run[0], run.at(-1)];
  if (first === undefined || last === undefined) {
    return {
      length,
      notches,
      joins: [],
      darts,
      joints,
      angles: [NaN, NaN],
      ends: ['', ''],
      beside: ['', ''],
    };
  }
  const before = outline.at(outline.indexOf(first) - 1);
  const after = outline[(outline.indexOf(last) + 1) % outline.length];
  return {
    length,
    notches: notches.toSorted((a, b) => a.at - b.at),
    joins: [],
    darts,
    joints,
    angles: [angleBetweenEdges(piece, before, first), angleBetweenEdges(piece, last, after)],
    ends: [`${name}.${first.from}`, `${name}.${last.to}`],
    beside: [`${name}.${before?.seam ?? ''}`, `${name}.${after?.seam ?? ''}`],
  };
}

/** The joint of an edge at which a notch stands, if it stands at one. */
function jointMarked(place: NotchPlace, seam: string): readonly string[] {
  if (place.by === 'joint') return [place.point];
  return place.by === 'level' && place.edge === seam ? [place.joint] : [];
}

/**
 * Notches that are no point of the outline and whose place on the sewing line is on this edge: neither
 * at its ends, which meet without a notch, nor at the legs of darts and tucks, which are walked over.
 */
function sewnNotches(piece: Piece, seam: string): WalkedNotch[] {
  const { outline, name, notches } = piece.plan;
  const sewn = edgesInOrder(outline, seam).filter(({ kind }) => kind !== 'dart');
  const [starts, ends] = [sewn.map(({ from }) => from), sewn.map(({ to }) => to)];
  const loose = [
    ...starts.filter((start) => !ends.includes(start)),
    ...ends.filter((end) => !starts.includes(end)),
  ].map((end) => pointOf(piece, end));
  return notches.flatMap(({ place, name: notch }): WalkedNotch[] => {
    if (place.by !== 'cut') return [];
    const at = pointOf(piece, place.sewn ?? place.point);
    if (loose.some((end) => distance(end, at) <= SEWN_PLACE)) return [];
    const found = nearestEdgePlace(piece, sewn, at);
    if (found === undefined || found.away > SEWN_PLACE) return [];
    return [{ piece: name, name: notch, at: found.at }];
  });
}

/** The same walk from its other end. */
export function walkedBack({
  length,
  notches,
  joins,
  darts,
  joints,
  angles,
  ends,
  beside,
}: Walk): Walk {
  const from = (found: readonly WalkedNotch[]): readonly WalkedNotch[] =>
    found.toReversed().map((own) => ({ ...own, at: length - own.at }));
  return {
    length,
    notches: from(notches),
    joins: from(joins),
    darts: from(darts),
    joints: joints.toReversed().map((at) => length - at),
    angles: [angles[1], angles[0]],
    ends: [ends[1], ends[0]],
    beside: [beside[1], beside[0]],
  };
}

/** The edges of a name, the first of them where the outline comes to it from another edge. */
export function edgesInOrder(outline: readonly Edge[], seam: string): readonly Edge[] {
  const start = outline.findIndex(
    (edge, i) => edge.seam === seam && outline.at(i - 1)?.seam !== seam,
  );
  const turned = start <= 0 ? outline : [...outline.slice(start), ...outline.slice(0, start)];
  return turned.filter((edge) => edge.seam === seam);
}
