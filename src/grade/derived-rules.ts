/** Rules that were derived, in the form of rules that somebody gave: one for every point. */
import type { GivenRule, GivenRules } from '../rule-sheet/point-rules';
import type { GradedPattern } from './graded-pattern';

/** The rules of a graded pattern as applied; `file` names their origin. */
export function derivedRules(
  { sizes, plans, rules }: Pick<GradedPattern, 'sizes' | 'plans' | 'rules'>,
  file: string,
): GivenRules {
  return {
    file,
    typed: false,
    sizes: sizes.map(({ label }) => label),
    base: rules.base,
    unread: [],
    ruled: plans.map(
      (plan, p) =>
        new Map(
          plan.pointNames.map((_, i): [number, GivenRule] => [
            i,
            {
              moves: rules.moves.map((pieces) => pieces[p]?.[i] ?? { x: NaN, y: NaN }),
              text: { x: '', y: '' },
              place: { file },
            },
          ]),
        ),
    ),
  };
}
