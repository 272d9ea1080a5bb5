/** One version of a pattern a size in, graded pattern out: rules, then every size from base plus rules. */
import { cutPieces } from '../pattern/cut-pieces';
import type { Piece } from '../pattern/piece';
import type { GradedPattern, SizedPattern } from './graded-pattern';
import type { GradeRules } from './rules';
import { applyRules, deriveRules } from './rules';
import { stackOn, stackPointNamed } from './stack';

/** A size before it is graded: drafted, or moved by rules that somebody gave. */
export interface ExactSize {
  readonly label: string;
  readonly pieces: readonly Piece[];
  /** What allowances are named by in this size; empty where they are stated in mm. */
  readonly parameters: ReadonlyMap<string, number>;
}

/** From where a range is graded, how it lies, and how its rules are rounded. */
export interface GradeOptions {
  /** Place of the base among the sizes. */
  readonly base: number;
  /** The point on which the sizes of each piece that has it are laid; empty for none. */
  readonly stackPoint: string;
  /** How the rules are rounded; undefined leaves them exact. */
  readonly rounding: Rounding | undefined;
}

/** A step in mm, and what rounds rules to it. */
export interface Rounding {
  readonly step: number;
  readonly round: (base: readonly Piece[], rules: GradeRules, step: number) => GradeRules;
}

/**
 * Grades a range, its net lines only. The exact sizes give the rules; the graded pieces come from the
 * base and the rules alone. Throws InputError `point-unknown` for a stack point that the pieces lack.
 */
export function gradeSizes(
  exact: readonly ExactSize[],
  { base, rounding, ...options }: GradeOptions,
): GradedPattern {
  const plans = exact[base]?.pieces.map(({ plan }) => plan) ?? [];
  const stackPoint = stackPointNamed(plans, options.stackPoint);
  const stacked = exact.map(({ pieces }) => pieces.map((piece) => stackOn(piece, stackPoint)));
  const exactRules = deriveRules(stacked, base);
  const own = stacked[base] ?? [];
  const rules = rounding?.round(own, exactRules, rounding.step) ?? exactRules;
  return {
    base: exact[base]?.label ?? '',
    stackPoint,
    roundingStep: rounding?.step,
    plans,
    exactRules,
    rules,
    sizes: netSizes(own, rules, exact),
  };
}

/** The same range with its rules as they were before they were rounded, net lines only. */
export function unrounded(range: GradedPattern): GradedPattern {
  const { exactRules: rules, sizes } = range;
  const base = sizes[rules.base]?.pieces ?? [];
  return { ...range, roundingStep: undefined, rules, sizes: netSizes(base, rules, sizes) };
}

/** The same range with its sizes cut. */
export function cutSizes(range: GradedPattern): GradedPattern {
  const sizes = range.sizes.map((size) => ({
    ...size,
    cutPieces: cutPieces(size.pieces, size.parameters),
  }));
  return { ...range, sizes };
}

function netSizes(
  base: readonly Piece[],
  rules: GradeRules,
  sizes: readonly Pick<ExactSize, 'label' | 'parameters'>[],
): readonly SizedPattern[] {
  const graded = applyRules(base, rules);
  return sizes.map(({ label, parameters }, i) => {
    return { label, pieces: graded[i] ?? [], cutPieces: undefined, parameters, measures: [] };
  });
}
