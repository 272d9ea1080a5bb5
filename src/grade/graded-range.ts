/** A range graded from its base: what every check and every drawing reads. */
import type { TruedLength } from '../draft/compile-block';
import type { Measure } from '../measure/finished';
import type { CutPiece } from '../pattern/cut-piece';
import type { Piece, PiecePlan } from '../pattern/piece';
import type { RuleFormulas } from './rule-formula';
import type { GradeRules } from './rules';

/** One size of any pattern. */
export interface SizedPieces {
  readonly label: string;
  /** The size graded: base plus rules. */
  readonly pieces: readonly Piece[];
  /** The same pieces ready to cut, if the pattern itself says how. */
  readonly cutPieces?: readonly CutPiece[];
}

/** A pattern graded from its base, however its rules came about. */
export interface GradedPattern {
  readonly base: string;
  /** mm, or undefined where the rules are not rounded. */
  readonly roundingStep: number | undefined;
  readonly plans: readonly PiecePlan[];
  /** The rules as applied. */
  readonly rules: GradeRules;
  /** From the smallest to the largest. */
  readonly sizes: readonly SizedPieces[];
}

/** The rules in words, `texts[piece][point]`. */
export type RuleTexts = readonly (readonly {
  readonly x: { readonly text: string };
  readonly y: { readonly text: string };
}[])[];

/** A size of a drafted skirt: graded from the base, and beside that drafted anew to compare. */
export interface GradedSize extends SizedPieces {
  /** The body measurements that the draft used and those that tell its walker, in mm. */
  readonly body: ReadonlyMap<string, number>;
  /** The style's parameters in this size, in mm or plain numbers. */
  readonly parameters: ReadonlyMap<string, number>;
  /** The size drafted anew from its own column, laid on the stack point. */
  readonly draft: readonly Piece[];
  /** What truing moved when this size was drafted. */
  readonly trued: readonly TruedLength[];
  /** Measured from the graded outlines; `stride` is the step that they allow. */
  readonly measures: readonly Measure[];
}

/** A drafted skirt in all its sizes. */
export interface GradedRange extends GradedPattern {
  /** The point of each piece on which all sizes lie, the zero of its rules. */
  readonly stackPoint: string;
  /** The rules as derived, before any rounding. */
  readonly exactRules: GradeRules;
  /** The exact rules as formulas of the body measurements. */
  readonly ruleFormulas: RuleFormulas;
  /** From the smallest to the largest. */
  readonly sizes: readonly GradedSize[];
}

/** A finished measure of one size, in mm. Throws a RangeError if it is not taken. */
export function measureOf(size: GradedSize, name: string): number {
  const measure = size.measures.find((m) => m.name === name);
  if (measure === undefined) throw new RangeError(`no measure ${name}`);
  return measure.value;
}
