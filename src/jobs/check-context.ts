/** What the checks may ask about a graded pattern, rounded or not. */
import type { CheckContext, ExactGrade } from '../check/checks';
import { cutSizes, unrounded } from '../grade/grade-sizes';
import type { GradedPattern } from '../grade/graded-pattern';
import type { GivenRules } from '../rule-sheet/point-rules';
import { walkedSeams } from '../seams/walked-seam';

/** A graded pattern, and what is worked out of the same pattern before its rules were rounded. */
export interface ToCheck extends Omit<CheckContext, 'exact'> {
  readonly rulesOf: (exact: GradedPattern) => GivenRules;
  /** Adds what is known of each size besides its pieces. */
  readonly measured: (exact: GradedPattern) => GradedPattern;
}

/** The exact grade is made where the rules are rounded. */
export function checkContext({ rulesOf, measured, ...known }: ToCheck): CheckContext {
  const { range, pattern } = known;
  if (range.roundingStep === undefined) return { ...known, exact: undefined };
  const net = unrounded(range);
  const own = { range: net, seams: walkedSeams(net, pattern.seams), rules: rulesOf(net) };
  let made: CheckContext | undefined;
  const exact: ExactGrade = {
    ...own,
    context: () =>
      (made ??= { ...known, ...own, range: measured(cutSizes(net)), exact: undefined }),
  };
  return { ...known, exact };
}
