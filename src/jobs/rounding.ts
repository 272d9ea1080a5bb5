/** The rounding that a request asks for, and what it is held against. */
import type { CheckContext } from '../check/checks';
import type { Rounding } from '../grade/grade-sizes';
import { unrounded } from '../grade/grade-sizes';
import type { GradedPattern } from '../grade/graded-pattern';
import { readRoundingStep } from '../grade/rounding-step';
import type { SeamPair } from '../pattern/seam-pair';
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

/** What the checks ask of the same range without its rounding, made once; undefined without one. */
export function unroundedContext(
  range: GradedPattern,
  seams: readonly SeamPair[],
  contextOf: (exact: GradedPattern, seams: readonly WalkedSeam[]) => CheckContext,
): (() => CheckContext) | undefined {
  if (range.roundingStep === undefined) return undefined;
  let made: CheckContext | undefined;
  return () => {
    if (made !== undefined) return made;
    const exact = unrounded(range);
    return (made = contextOf(exact, walkedSeams(exact, seams)));
  };
}
