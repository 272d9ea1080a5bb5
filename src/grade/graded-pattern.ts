/** A pattern graded from its base: what every check, drawing and file reads. */
import type { Drafter, TruedLength } from '../draft/compile-block';
import type { ResolvedParameter } from '../draft/parameters';
import type { Style } from '../draft/styles';
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
  /** What it is called in words, if not `Size` and its label: that of one body. */
  readonly called?: string;
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
  /** Where the sizes were drafted, from what: all that a typed pattern does not have. */
  readonly draft?: RangeDraft;
}

/** What is known of a range that was drafted from a chart, and of no other. */
export interface RangeDraft {
  readonly style: Style;
  readonly parameters: readonly ResolvedParameter[];
  /** The compiled block, whose definitions tell how each point is drawn. */
  readonly drafter: Drafter;
  /** The exact rules as formulas of the body measurements. */
  readonly ruleFormulas: RuleFormulas;
  /** One for each size of the range, in its order. */
  readonly sizes: readonly SizeDraft[];
}

/** One size drafted from its own column of the chart. */
export interface SizeDraft {
  /** The body measurements that the draft used and those that tell its walker, in mm. */
  readonly body: ReadonlyMap<string, number>;
  /** As drafted, laid on the stack point of the range: what the graded pieces must equal. */
  readonly pieces: readonly Piece[];
  /** What truing moved. */
  readonly trued: readonly TruedLength[];
}

/** A graded pattern of which it is known that it was drafted. */
export type DraftedPattern = GradedPattern & { readonly draft: RangeDraft };

/** Whether a graded pattern was drafted. */
export function isDrafted(range: GradedPattern): range is DraftedPattern {
  return range.draft !== undefined;
}

/** Each size of a drafted range beside its draft. */
export function draftedSizes({
  sizes,
  draft,
}: DraftedPattern): readonly (SizedPattern & { readonly draft: SizeDraft })[] {
  return sizes.map((size, i) => ({ ...size, draft: draft.sizes[i] as SizeDraft }));
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
