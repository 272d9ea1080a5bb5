/** The rules of all corners of the panels, one line a point. */
import { askedPoints } from '../mark/answer-key';
import type { Drafted, Grade } from '../../jobs/grade-result';
import type { Rule } from '../../grade/rule-formula';
import { ruleText } from '../../grade/rule-formula-text';
import { NO_SLOPE } from '../../tolerance';
import { shareFraction } from './exact';

/** What a point moves by along each axis, such as `1/4 waist` or `~0.114 hip + 0.134 waist`. */
export interface PointRules {
  readonly piece: string;
  readonly point: string;
  readonly dx: string;
  readonly dy: string;
}

/** Every corner of every panel, in the order of the outline, seen from the stack point. */
export function pieceRules({ range }: Grade & Drafted): readonly PointRules[] {
  return range.plans.flatMap((plan, p) =>
    plan.part !== 'panel'
      ? []
      : askedPoints(plan).map((point) => {
          const rule = range.draft.ruleFormulas[p]?.[plan.index.get(point) ?? -1];
          return {
            ...{ piece: plan.name, point },
            dx: shortRule(rule?.x),
            dy: shortRule(rule?.y),
          };
        }),
  );
}

function shortRule(rule: Rule | undefined): string {
  if (rule?.coefficients === undefined) return 'not one rule';
  const terms = [...rule.coefficients]
    .filter(([, slope]) => Math.abs(slope) > NO_SLOPE)
    .map(([name, slope]) => [name.replace(/_girth$/u, ''), shareFraction(slope)] as const);
  return `${rule.kind === 'linear' || terms.length === 0 ? '' : '~'}${ruleText('linear', new Map(terms))}`;
}
