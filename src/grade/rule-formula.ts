/** The grade rule of every point as a formula: what it moves by for each body measurement. */
import type { Draft, Drafter } from '../draft/compile-block';
import { fraction, quotient } from '../formula/fraction';
import type { PiecePlan } from '../pattern/piece';
import type { Gradient } from './rule-formula-gradients';
import { blockGradients, lessGradient } from './rule-formula-gradients';
import type { Slopes } from './rule-formula-slopes';
import { probeSlopes } from './rule-formula-slopes';
import { ruleText } from './rule-formula-text';

/**
 * `linear`: the same in every size, so that increments times rule is the move. `smooth`: the exact
 * derivative, in the base size. `implicit`: the numeric derivative in the base size, of a point that
 * depends on what truing finds, or that is computed from finished panels.
 */
export type RuleKind = Gradient['kind'];

/** The rule of one coordinate. */
export interface Rule {
  readonly kind: RuleKind;
  /**
   * mm that the coordinate moves for each mm of a measurement; zeros are absent. Undefined for an
   * implicit rule that has a kink or a jump at the base size.
   */
  readonly coefficients: ReadonlyMap<string, number> | undefined;
  /**
   * For people: `1/4 waist_girth`, `0.2471 hip_girth (smooth at base)`. Fractions are exact,
   * decimals have four significant digits.
   */
  readonly text: string;
}

/** The rule of a point: x positive away from the center line, y positive down. */
export interface PointRule {
  readonly x: Rule;
  readonly y: Rule;
}

/** `formulas[piece][point]`, pieces and points in the order of the plans. */
export type RuleFormulas = readonly (readonly PointRule[])[];

/**
 * The rules of a range with its stack point, from the base size: its measurements in mm in the
 * drafter's order, and its draft. A piece without the stack point keeps its own zero. Implicit rules
 * take as long as drafting a few sizes, so they are found when the first of them is read.
 */
export function ruleFormulas(
  drafter: Drafter,
  body: readonly number[],
  base: Draft,
  stackPoint: string,
): RuleFormulas {
  const gradients = blockGradients(drafter, base);
  let probed: ReturnType<typeof probeSlopes> | undefined;
  const ruleOf = (plan: PiecePlan, p: number, k: number, axis: 'x' | 'y'): Rule => {
    const gradient = moved(gradients, plan, plan.pointNames[k] ?? '', stackPoint, axis);
    if (gradient !== undefined && gradient.kind !== 'implicit') return explicitRule(gradient);
    return implicitRule(() => {
      probed ??= probeSlopes(drafter, body, base, stackPoint);
      return probed(p, k, axis);
    });
  };
  return drafter.plans.map((plan, p) =>
    plan.pointNames.map((_, k) => ({ x: ruleOf(plan, p, k, 'x'), y: ruleOf(plan, p, k, 'y') })),
  );
}

/** How a point moves as seen from the stack point; undefined where no formula gives the point. */
function moved(
  gradients: ReadonlyMap<string, Gradient>,
  { name, index }: PiecePlan,
  point: string,
  stackPoint: string,
  axis: 'x' | 'y',
): Gradient | undefined {
  if (point === stackPoint) return { kind: 'linear', terms: new Map() };
  const own = gradients.get(`${name}/${point}.${axis}`);
  if (own === undefined || !index.has(stackPoint)) return own;
  const zero = gradients.get(`${name}/${stackPoint}.${axis}`);
  return zero === undefined ? undefined : lessGradient(own, zero);
}

function explicitRule({ kind, terms }: Gradient): Rule {
  return {
    kind,
    coefficients: new Map([...terms].map(([name, coefficient]) => [name, quotient(coefficient)])),
    text: ruleText(kind, terms),
  };
}

function implicitRule(find: () => Slopes | undefined): Rule {
  return {
    kind: 'implicit',
    get coefficients() {
      return find();
    },
    get text() {
      const slopes = find();
      if (slopes === undefined) return 'not smooth at base';
      const terms = new Map([...slopes].map(([name, slope]) => [name, fraction(slope)]));
      return ruleText('implicit', terms);
    },
  };
}
