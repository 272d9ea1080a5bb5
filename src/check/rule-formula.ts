/** The rules as formulas against the rules as moves: increments times a linear rule is the move. */
import type { DraftedPattern, SizeDraft } from '../grade/graded-pattern';
import type { RuleFormulas } from '../grade/rule-formula';
import { GRADE_REPRODUCES_DRAFT } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

const CHECK = 'rule-formula';

const AXES = ['x', 'y'] as const;

/** A coordinate whose rule is linear. */
interface LinearRule {
  readonly piece: number;
  readonly point: number;
  readonly axis: 'x' | 'y';
  readonly coefficients: ReadonlyMap<string, number>;
}

/** One finding a size with the coordinate that its linear rule misses most. */
export function checkRuleFormulas(range: DraftedPattern, display: LengthDisplay): Finding[] {
  const { draft } = range;
  const base = draft.sizes[range.exactRules.base];
  const rules = linearRules(draft.ruleFormulas);
  if (base === undefined) return [];
  return range.sizes.map((size, i) => {
    let worst = -1;
    let at: LinearRule | undefined;
    for (const rule of rules) {
      const move = range.exactRules.moves[i]?.[rule.piece]?.[rule.point]?.[rule.axis] ?? NaN;
      const off = Math.abs(moveByRule(rule, base, draft.sizes[i] as SizeDraft) - move);
      // A value that is no number is the worst there is.
      if (!(off <= worst)) [worst, at] = [off, rule];
    }
    const plan = range.plans[at?.piece ?? -1];
    const [piece, subject] = [plan?.name ?? '', plan?.pointNames[at?.point ?? -1] ?? ''];
    const held = worst <= GRADE_REPRODUCES_DRAFT;
    return found({
      severity: held ? 'ok' : 'fail',
      check: CHECK,
      size: size.label,
      piece,
      subject,
      measured: worst,
      expected: 0,
      tolerance: GRADE_REPRODUCES_DRAFT,
      message:
        `increments times rule ${held ? 'gives' : 'does not give'} the move of every coordinate ` +
        `with a linear rule: ${showLength(worst, display)} apart at ${piece} ${subject}`,
    });
  });
}

function linearRules(ruleFormulas: RuleFormulas): readonly LinearRule[] {
  return ruleFormulas.flatMap((points, piece) =>
    points.flatMap((rules, point) =>
      AXES.flatMap((axis) => {
        const { kind } = rules[axis];
        const coefficients = kind === 'linear' ? rules[axis].coefficients : undefined;
        return coefficients === undefined ? [] : [{ piece, point, axis, coefficients }];
      }),
    ),
  );
}

function moveByRule({ coefficients }: LinearRule, base: SizeDraft, size: SizeDraft): number {
  let sum = 0;
  for (const [name, coefficient] of coefficients)
    sum += coefficient * ((size.body.get(name) ?? NaN) - (base.body.get(name) ?? NaN));
  return sum;
}
