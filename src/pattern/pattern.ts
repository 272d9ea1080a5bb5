/**
 * A pattern: pieces in the base size with all that cutting and sewing want to know of them. A draft, a
 * pattern sheet and an exchange file all fill this value, and nothing after it asks which it was.
 */
import type { Place } from '../errors';
import type { Point } from '../geometry/point';
import { point } from '../geometry/point';
import { segmentLength } from '../geometry/segment';
import type { Imprint } from '../table/imprint';
import type { UnreadText } from '../table/unread';
import type { LengthUnit } from '../units';
import type { Edge, Piece } from './piece';
import { edgeSegments } from './piece';
import type { SeamPair } from './seam-pair';

/** A curve through points of the outline or the cut line; all are places in the plan's `pointNames`. */
export interface SplineRun {
  readonly points: readonly number[];
  /** Two for each span: the points that hold the handles of the spline. */
  readonly handles: readonly number[];
  /** mm by which the spans count, from the base size. */
  readonly spans: readonly number[];
}

/** A point of a closed line, and how far in mm along the line it lies, darts closed. */
export interface PathStop {
  readonly point: number;
  readonly at: number;
}

/** The points of a closed line in its order. */
export interface ClosedPath {
  readonly stops: readonly PathStop[];
  /** mm along the whole line, darts closed. */
  readonly around: number;
}

/** A point that moves with two others where it has no rule: by `share` of the way to the second. */
export interface Follower {
  readonly point: number;
  readonly from: number;
  readonly to: number;
  readonly share: number;
}

/** A piece in the base size, and how its points move where they have no rule of their own. */
export interface PatternPiece {
  /** In the base size, the handles of splines among its points. */
  readonly base: Piece;
  readonly splines: readonly SplineRun[];
  /** The corners, curve points, notches and dart tips of the outline. */
  readonly path: ClosedPath;
  /** The same of the cut line, where there is one. */
  readonly cutPath: ClosedPath | undefined;
  /** Handles, grain, inside lines, drill holes and whatever else lies on no edge. */
  readonly followers: readonly Follower[];
  /** The unit vector in which rules count x; (1, 0) if the pattern gives no reference line. */
  readonly ruleX: Point;
  /** Named rules that the pattern itself gives its points. */
  readonly ruleNames: ReadonlyMap<string, { readonly rule: string; readonly place: Place }>;
}

/** What is to be said of the reading of a drawing. */
export interface ReadingNote {
  /** `fail` for a shape or a rule that is lost. */
  readonly severity: 'fail' | 'warning' | 'note';
  /**
   * `left-out` is not in the pattern; of the others `what` is a sentence: a rule that stands
   * `rule-beside` its point, a `notch-beside` every line, a `gap-closed` in an outline, a block that
   * is `placed` in a way that matters, a `cut-unruled` line beside a sewing line with rules, pieces
   * that may be a `nest`, and a `unit-doubt`.
   */
  readonly check:
    | 'left-out'
    | 'rule-beside'
    | 'notch-beside'
    | 'gap-closed'
    | 'placed'
    | 'cut-unruled'
    | 'nest'
    | 'unit-doubt';
  /** Name of the piece; empty for the sheet. */
  readonly piece: string;
  readonly what: string;
}

/** All pieces of a garment in its base size, and what is sewn to what. */
export interface Pattern {
  /** The file that it was read from, or the chart that it was drafted from, for messages. */
  readonly file: string;
  readonly title: string | undefined;
  /** What its file states for a cover. */
  readonly imprint?: Imprint;
  /** The unit of the file; places here are mm all the same. */
  readonly unit: LengthUnit;
  /** The label of the size that it shows, where it says so. */
  readonly base: string | undefined;
  readonly pieces: readonly PatternPiece[];
  readonly seams: readonly SeamPair[];
  /** Seam names that are on one edge or on three and more, and so pair nothing. */
  readonly unpaired: readonly { readonly name: string; readonly edges: number }[];
  /** What a drawing had that is not in the pattern, or is in it in another way. */
  readonly leftOut: readonly ReadingNote[];
  /** What its file, and its list of seams, have beside their tables and was not understood. */
  readonly unread: readonly UnreadText[];
}

/** A piece all of whose points have rules, so that nothing has to follow. */
export function ruledPiece(base: Piece): PatternPiece {
  const { plan } = base;
  return {
    base,
    splines: [],
    path: pathAlong(base, plan.outline),
    cutPath: plan.cutLine && pathAlong(base, plan.cutLine),
    followers: [],
    ruleX: point(1, 0),
    ruleNames: new Map(),
  };
}

/** The points that a closed line passes, tips of darts among them, and how far along it they lie. */
export function pathAlong(piece: Piece, line: readonly Edge[]): ClosedPath {
  const { index } = piece.plan;
  const stops: PathStop[] = [];
  let at = 0;
  for (const edge of line) {
    stops.push({ point: index.get(edge.from) ?? -1, at });
    if (edge.kind === 'dart') stops.push({ point: index.get(edge.tip) ?? -1, at });
    else at += edgeSegments(piece, edge).reduce((sum, part) => sum + segmentLength(part), 0);
  }
  return { stops, around: at };
}
