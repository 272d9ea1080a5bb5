/** Grade rules as somebody gives them: moves of some points, in the axes of a reference line. */
import type { Place } from '../errors';
import type { Point } from '../geometry/point';
import type { UnreadText } from '../table/unread';

/** mm. No point of a skirt moves farther from the base along an axis. The engine's own figure. */
export const MOST_MOVE = 1_000;

/** The rule of one point. */
export interface GivenRule {
  /** Cumulative moves from the base in mm, one a size; along and square to the reference line. */
  readonly moves: readonly Point[];
  /** The rule of x and of y as typed, where it is a formula or the same step for every size. */
  readonly text: { readonly x: string; readonly y: string };
  /** Where its first row stands. */
  readonly place: Place;
}

/** A point with a rule: the places of its piece in the pattern and of itself in the plan. */
export interface RuledPoint {
  readonly piece: number;
  readonly point: number;
}

/** The rules of a pattern, by piece and point. */
export interface GivenRules {
  readonly file: string;
  /**
   * True where somebody typed them, so that they may have slips, and carry the base to every size; derived
   * ones are no more than how each size differs from the base by its own measurements.
   */
  readonly typed: boolean;
  /** Labels from the smallest to the largest. */
  readonly sizes: readonly string[];
  /** Place of the base size among them. */
  readonly base: number;
  /** For each piece the rules of its points, by the place of the point in the plan. */
  readonly ruled: readonly ReadonlyMap<number, GivenRule>[];
  /** What stands beside them in their file and was not understood. */
  readonly unread: readonly UnreadText[];
}

/** The rules in words, `texts[piece][point]`. */
export type RuleTexts = readonly (readonly {
  readonly x: { readonly text: string };
  readonly y: { readonly text: string };
}[])[];
