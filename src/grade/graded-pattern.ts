/** A pattern graded from its base: what every check, drawing and file reads. */
import type { TruedLength } from '../draft/compile-block';
import type { CutPiece } from '../pattern/cut-piece';
import type { Piece, PiecePlan } from '../pattern/piece';
import type { RuleFormulas } from './rule-formula';
import type { GradeRules } from './rules';

/** One finished measurement in millimeters. */
export interface Measure {
  readonly name: string;
  readonly value: number;
}

/** One size of a pattern, graded and cut once. */
export interface SizedPattern {
  readonly label: string;
  /** The size graded: base plus rules. */
  readonly pieces: readonly Piece[];
  /** The same pieces ready to cut; undefined if nothing says how any of them is cut. */
  readonly cutPieces: readonly CutPiece[] | undefined;
  /** What allowances and ease are named by in this size, in mm or plain numbers. */
  readonly parameters: ReadonlyMap<string, number>;
  /** Measured from the graded outlines; none where nothing says what is to be measured. */
  readonly measures: readonly Measure[];
}

/** A pattern graded from its base, however its rules came about. */
export interface GradedPattern {
  readonly base: string;
  /** The point on which the sizes of each piece that has it are laid; empty for none. */
  readonly stackPoint: string;
  /** mm, or undefined where the rules are not rounded. */
  readonly roundingStep: number | undefined;
  readonly plans: readonly PiecePlan[];
  /** The rules as derived, before any rounding. */
  readonly exactRules: GradeRules;
  /** The rules as applied. */
  readonly rules: GradeRules;
  /** From the smallest to the largest; a blend stands behind. */
  readonly sizes: readonly SizedPattern[];
  /** Label of the size that is put together from sizes of the chart, if one is: no neighbor of the base. */
  readonly blend?: string | undefined;
}

/** One size of a drafted range, and the draft that it must equal. */
export interface GradedSize extends SizedPattern {
  /** The body measurements that the draft used and those that tell its walker, in mm. */
  readonly body: ReadonlyMap<string, number>;
  /** The size drafted anew from its own column, laid on the stack point. */
  readonly draft: readonly Piece[];
  /** What truing moved when this size was drafted. */
  readonly trued: readonly TruedLength[];
}

/** A graded range whose rules come from one draft a size. */
export interface GradedRange extends GradedPattern {
  /** The exact rules as formulas of the body measurements. */
  readonly ruleFormulas: RuleFormulas;
  /** From the smallest to the largest. */
  readonly sizes: readonly GradedSize[];
}

/** A finished measure of one size, in mm. Throws a RangeError if it is not taken. */
export function measureOf(
  { measures }: { readonly measures: readonly Measure[] },
  name: string,
): number {
  const measure = measures.find((m) => m.name === name);
  if (measure === undefined) throw new RangeError(`no measure ${name}`);
  return measure.value;
}
