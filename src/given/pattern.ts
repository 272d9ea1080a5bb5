/** A pattern that somebody already has: base pieces, and what grading needs to know of them. */
import type { Place } from '../errors';
import type { Point } from '../geometry/point';
import type { Piece } from '../pattern/piece';
import type { LengthUnit } from '../units';
import type { ReadingNote } from './raw-point';

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
export interface Path {
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

export interface GivenPiece {
  /** In the base size, the handles of splines among its points. */
  readonly base: Piece;
  readonly splines: readonly SplineRun[];
  /** The corners, curve points, notches and dart tips of the outline. */
  readonly path: Path;
  /** The same of the cut line, where there is one. */
  readonly cutPath: Path | undefined;
  /** Handles, grain, inside lines, drill holes and whatever else lies on no edge. */
  readonly followers: readonly Follower[];
  /** The allowance in mm outside each edge, by its name; empty for a piece without any. */
  readonly allowances: ReadonlyMap<string, number>;
  /** The unit vector in which rules count x; (1, 0) if the pattern gives no reference line. */
  readonly ruleX: Point;
  /** Named rules that the pattern itself gives its points. */
  readonly ruleNames: ReadonlyMap<string, { readonly rule: string; readonly place: Place }>;
}

/** Edges of pieces that are sewn one after another, each as `piece` and the name of its edge. */
export interface SeamSide {
  readonly edges: readonly { readonly piece: string; readonly edge: string }[];
}

/** Two sides of a seam that are sewn together. */
export interface SeamPair {
  readonly name: string;
  readonly sides: readonly [SeamSide, SeamSide];
  /** mm by which the first side is meant to be longer, to be eased in. */
  readonly ease: number;
  /** Whether both sides run the same way round in their outlines; undefined is found by fit. */
  readonly way: 'same' | 'opposite' | undefined;
}

export interface GivenPattern {
  readonly file: string;
  readonly title: string | undefined;
  readonly unit: LengthUnit;
  /** The label of the size that it shows, where it says so. */
  readonly base: string | undefined;
  readonly pieces: readonly GivenPiece[];
  readonly seams: readonly SeamPair[];
  /** Seam names that are on one edge or on three and more, and so pair nothing. */
  readonly unpaired: readonly { readonly name: string; readonly edges: number }[];
  /** What a drawing had that is not in the pattern, or is in it in another way. */
  readonly leftOut: readonly ReadingNote[];
}
