/** The rounding that a request asks for, and what it is held against. */
import type { ExactGrade } from '../check/checks';
import type { Rounding } from '../grade/grade-sizes';
import { cutSizes, unrounded } from '../grade/grade-sizes';
import type { GradedPattern } from '../grade/graded-pattern';
import { readRoundingStep } from '../grade/rounding-step';
import type { SeamPair } from '../pattern/seam-pair';
import type { GivenRules } from '../rule-sheet/point-rules';
import { roundSewn } from '../seams/round-sewn';
import type { WalkedSeam } from '../seams/walked-seam';
import { walkedSeams } from '../seams/walked-seam';
import type { LengthUnit } from '../units';

/**
 * To the step that was typed, if one was, so that these seams still hold; `unit` is that of a bare
 * number. Throws InputError `bad-option`.
 */
export function roundingOf(
  text: string | undefined,
  unit: LengthUnit,
  seams: readonly SeamPair[],
): Rounding | undefined {
  if (text === undefined) return undefined;
  return {
    step: readRoundingStep(text, unit),
    round: (base, rules, step) => roundSewn(base, seams, rules, step),
  };
}

/** What the checks hold a rounded range against; undefined for one that is not rounded. */
export function exactGrade<Context>(
  rounded: GradedPattern,
  pairs: readonly SeamPair[],
  rulesOf: (exact: GradedPattern) => GivenRules,
  contextOf: (exact: GradedPattern, seams: readonly WalkedSeam[]) => Context,
): ExactGrade<Context> | undefined {
  if (rounded.roundingStep === undefined) return undefined;
  const range = unrounded(rounded);
  const seams = walkedSeams(range, pairs);
  let made: Context | undefined;
  return {
    range,
    seams,
    rules: rulesOf(range),
    context: () => (made ??= contextOf(cutSizes(range), seams)),
  };
}
