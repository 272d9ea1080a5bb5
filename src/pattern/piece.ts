/** A pattern piece: named points, and edges between them that carry the name of their seam. */
import type { Point } from '../geometry/point';
import { distance } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { segmentLength } from '../geometry/segment';
import type { Face } from './face-up';

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
    | 'length-line'
    | 'hip-depth-line'
    | 'internal-line'
    | 'grainline';
  readonly through: readonly string[];
}

/**
 * What a piece is in a skirt; the panels together make its girths. A `piece` is any other flat
 * piece, of which the engine knows nothing but its lines. Whatever only a skirt has hangs on this.
 */
export type Part = 'panel' | 'waistband' | 'facing' | 'lining' | 'piece';

/** How a piece is cut from one cloth: so many times, or so many times on the fold. */
export interface Cutting {
  readonly cloth: 'shell' | 'lining' | 'interfacing';
  readonly count: number;
  readonly onFold: boolean;
  /** The side of the cloth that is up, if a given pattern states it. */
  readonly up?: Face;
}

/**
 * How the allowance outside an edge is worked, which decides the corners of its cut line: turned up,
 * pressed apart once the seam is sewn, or neither.
 */
export type EdgeFinish = 'hem' | 'pressed-open' | 'plain';

/** What an edge has besides its line. */
export interface EdgeTraits {
  /** mm, or the parameter that holds them in each size; undefined where nothing says how it is cut. */
  readonly allowance: number | string | undefined;
  readonly finish: EdgeFinish;
}

/**
 * Where a notch stands: `joint`, square to the edge that arrives at or leaves a point of the outline;
 * `along`, on the line from one point through another, as at the leg of a dart; `level`, as far
 * before the end of an edge as a joint is on the piece `like`, so that both always meet; `zip`, where
 * the zip ends along an edge; `cut`, at a point of the given cut line, and met at the point `sewn` of
 * the sewing line, or at the nearest place of it.
 */
export type NotchPlace =
  | { readonly by: 'joint'; readonly point: string; readonly beside: 'before' | 'after' }
  | { readonly by: 'along'; readonly point: string; readonly from: string }
  | {
      readonly by: 'level';
      readonly edge: string;
      readonly joint: string;
      readonly like: string;
    }
  | { readonly by: 'zip'; readonly edge: string }
  | { readonly by: 'cut'; readonly point: string; readonly sewn?: string };

/** A notch in every size. */
export interface NotchRule {
  /** What it marks and matches, such as `hip-line`, `dart`, `center`. */
  readonly name: string;
  readonly marks: 1 | 2;
  readonly place: NotchPlace;
}

/** A drill hole: at a point, or short of the tip of a dart. */
export type DrillRule = { readonly point: string } | { readonly dart: string };

/** The opening for a zip: from the top of an edge down to a level that the body must pass. */
export interface ZipRule {
  readonly top: string;
  readonly level: string;
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
  /** The traits of the edges, by the name of their seam; an edge that is not there is plain. */
  readonly edges: ReadonlyMap<string, EdgeTraits>;
  /** Whether the length of the piece lies along the grain, as a band's must, which must not give. */
  readonly grain: 'down' | 'across';
  /** The line that is cut, closed, where the pattern gives it besides its sewing line. */
  readonly cutLine?: readonly Edge[];
  readonly notches: readonly NotchRule[];
  readonly drillHoles: readonly DrillRule[];
  readonly zip?: ZipRule;
  /** Place of each name in `pointNames`. */
  readonly index: ReadonlyMap<string, number>;
  /** The darts of the outline, in order. */
  readonly darts: readonly DartEdge[];
}

/** An edge that runs from one leg of a dart over its tip to the other leg. */
export type DartEdge = Edge & { readonly kind: 'dart' };

/** What a plan can do without: edges without traits, marks of no kind, the grain straight down. */
type Spare = 'edges' | 'grain' | 'notches' | 'drillHoles';

/** A plan with its look-ups filled in. */
export function piecePlan(
  plan: Omit<PiecePlan, 'index' | 'darts' | Spare> & Partial<Pick<PiecePlan, Spare>>,
): PiecePlan {
  return {
    edges: new Map(),
    grain: 'down',
    notches: [],
    drillHoles: [],
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
