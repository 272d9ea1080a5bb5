/** A pattern piece: named points, and edges between them that carry the name of their seam. */
import type { Point } from '../geometry/point';
import { distance } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentLength } from '../geometry/segment';

/**
 * One edge of an outline. Ends and handles are point names. A dart is an edge that runs from one
 * leg's end over the tip to the other; it vanishes from its seam when it is sewn.
 */
export type Edge =
  | { readonly kind: 'line'; readonly from: string; readonly to: string; readonly seam: string }
  | { readonly kind: 'fold'; readonly from: string; readonly to: string; readonly seam: string }
  | {
      readonly kind: 'cubic';
      readonly from: string;
      readonly leave: string;
      readonly arrive: string;
      readonly to: string;
      readonly seam: string;
    }
  | {
      readonly kind: 'dart';
      readonly name: string;
      readonly from: string;
      readonly tip: string;
      readonly to: string;
      readonly seam: string;
    };

/** A line drawn inside or beside the outline: it marks a level or an allowance and is not sewn. */
export interface MarkedLine {
  readonly name:
    | 'hip-line'
    | 'zip-allowance'
    | 'dart-fold'
    | 'fold-line'
    | 'tuck'
    | 'left-back-edge'
    | 'internal-line'
    | 'grainline';
  readonly through: readonly string[];
}

/**
 * What a piece is in a skirt; the panels together make its girths. A `piece` is any other flat
 * piece, of which the engine knows nothing but its lines.
 */
export type Part = 'panel' | 'waistband' | 'facing' | 'lining' | 'piece';

/** How a piece is cut from one cloth: so many times, or so many times on the fold. */
export interface Cutting {
  readonly cloth: 'shell' | 'lining' | 'interfacing';
  readonly count: number;
  readonly onFold: boolean;
}

/**
 * What is the same in every size: which points a piece has and how they are joined. Decided once
 * for a whole range, so that every size can be graded point by point.
 */
export interface PiecePlan {
  readonly name: string;
  readonly part: Part;
  readonly cuttings: readonly Cutting[];
  readonly pointNames: readonly string[];
  /** Names of the points that only shape a curve; they are graded, but they are not corners. */
  readonly handles: ReadonlySet<string>;
  /** Edges in order, each starting where the one before ends, and the last closing the outline. */
  readonly outline: readonly Edge[];
  readonly marks: readonly MarkedLine[];
  /** The line that is cut, closed, where the pattern gives it besides its sewing line. */
  readonly cutLine?: readonly Edge[];
  /** Notches, on the outline or on the cut line, and drill holes, where the pattern gives them. */
  readonly notches?: readonly string[];
  /** The point at which a notch of the cut line meets the outline, where the pattern gives it. */
  readonly sewnNotches?: ReadonlyMap<string, string>;
  /** Those of the notches that are double. */
  readonly doubleNotches?: ReadonlySet<string>;
  readonly drillHoles?: readonly string[];
  /** Place of each name in `pointNames`. */
  readonly index: ReadonlyMap<string, number>;
  /** The darts of the outline, in order. */
  readonly darts: readonly DartEdge[];
}

export type DartEdge = Edge & { readonly kind: 'dart' };

/** A plan with its look-ups filled in. */
export function piecePlan(plan: Omit<PiecePlan, 'index' | 'darts'>): PiecePlan {
  return {
    ...plan,
    index: new Map(plan.pointNames.map((name, i) => [name, i])),
    darts: plan.outline.filter((edge) => edge.kind === 'dart'),
  };
}

/** A plan with a place for each of its points: `points[i]` is where `plan.pointNames[i]` lies. */
export interface Piece {
  readonly plan: PiecePlan;
  readonly points: readonly Point[];
}

/** The panels among the pieces: the half front and half back that make the girths. */
export function panelsOf(pieces: readonly Piece[]): readonly Piece[] {
  return pieces.filter(({ plan }) => plan.part === 'panel');
}

/** The piece of that name. Throws a RangeError if there is none. */
export function pieceNamed(pieces: readonly Piece[], name: string): Piece {
  const found = pieces.find(({ plan }) => plan.name === name);
  if (found === undefined) throw new RangeError(`there is no piece ${name}`);
  return found;
}

/** The place of a named point. Throws a RangeError if the plan has no such point. */
export function pointOf(piece: Piece, name: string): Point {
  const found = piece.points[piece.plan.index.get(name) ?? -1];
  if (found === undefined) throw new RangeError(`${piece.plan.name} has no point ${name}`);
  return found;
}

/** The segments of one edge: a dart has two, everything else one. */
export function edgeSegments(piece: Piece, edge: Edge): readonly Segment[] {
  const from = pointOf(piece, edge.from);
  const to = pointOf(piece, edge.to);
  switch (edge.kind) {
    case 'line':
    case 'fold':
      return [{ kind: 'line', from, to }];
    case 'cubic':
      return [
        {
          kind: 'cubic',
          from,
          leave: pointOf(piece, edge.leave),
          arrive: pointOf(piece, edge.arrive),
          to,
        },
      ];
    case 'dart': {
      const tip = pointOf(piece, edge.tip);
      return [
        { kind: 'line', from, to: tip },
        { kind: 'line', from: tip, to },
      ];
    }
  }
}

/** The whole outline as segments, in order and closed. */
export function outlineSegments(piece: Piece): readonly Segment[] {
  return piece.plan.outline.flatMap((edge) => edgeSegments(piece, edge));
}

/** The cut line of a piece whose pattern gives it; undefined for one without. */
export function cutLineSegments(piece: Piece): readonly Segment[] | undefined {
  return piece.plan.cutLine?.flatMap((edge) => edgeSegments(piece, edge));
}

/** Length in millimeters of a seam as it is sewn: its edges without its darts. */
export function seamLength(piece: Piece, seam: string): number {
  let sum = 0;
  for (const edge of piece.plan.outline) {
    if (edge.seam !== seam || edge.kind === 'dart') continue;
    if (edge.kind === 'cubic') {
      for (const segment of edgeSegments(piece, edge)) sum += segmentLength(segment);
    } else sum += distance(pointOf(piece, edge.from), pointOf(piece, edge.to));
  }
  return sum;
}
