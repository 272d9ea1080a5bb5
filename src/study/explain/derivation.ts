/** The grade rule of one point derived step by step, as a teacher would on a board. */
import { needValues } from '../../chart/need-values';
import { InputError } from '../../errors';
import type { Fraction } from '../../formula/fraction';
import { ZERO, plus, times, quotient } from '../../formula/fraction';
import { roundTo } from '../../grade/rounding';
import { namedPoint } from '../../pattern/named-point';
import type { Rule } from '../../grade/rule-formula';
import type { Axis } from '../../rule-sheet/rule-sheet';
import { addedUp, asSteps } from '../../rule-sheet/moves-and-steps';
import type { Drafted, Grade } from '../../jobs/grade-result';
import { matchSize } from '../../table/name-match';
import { wantedSizes } from '../../table/near-names';
import { NO_SLOPE, STEPS_ADD_UP } from '../../tolerance';
import { lengthFraction, shareFraction } from './exact';
import type { FormulaChain } from './formula-chain';
import { formLess, formulaChain } from './formula-chain';
import { measurementsThatReach } from './moving-measurements';
import type { LinearForm } from '../../formula/linear-form';

/** A measurement's part in a rule. */
export interface Term {
  readonly measurement: string;
  /** The partial derivative: how far the point moves for one unit of the measurement. */
  readonly share: Fraction;
}

/** One step between neighboring sizes, counted away from the base. Lengths in the display's unit. */
export interface DerivedStep {
  readonly from: string;
  readonly to: string;
  /** Per term: the measurement before, after, its growth, and growth times share. */
  readonly terms: readonly {
    readonly before: Fraction;
    readonly after: Fraction;
    readonly growth: Fraction;
    readonly product: Fraction;
  }[];
  /** The sum of the products. */
  readonly step: Fraction;
  /** All steps from the base to here. */
  readonly sum: Fraction;
  /** mm, from the drafts: the rule as applied; equal to `sum` for a linear rule. */
  readonly move: number;
  /** mm, the sum rounded once, and the sum of rounded steps. */
  readonly rounded: number;
  readonly drifted: number;
}

/** The derivation along one axis: x positive away from the center line, y positive down. */
export interface AxisDerivation {
  readonly axis: Axis;
  readonly kind: Rule['kind'];
  /** The rule for people, such as `1/4 waist_girth`; empty where the point has none. */
  readonly rule: string;
  /** How the coordinate comes from measurements. */
  readonly chain: FormulaChain;
  /** The same seen from the zero, put together; undefined where a formula gives only one of them. */
  readonly fromZero: LinearForm | undefined;
  /** Measurements in the formulas of the point and of the zero. */
  readonly named: readonly string[];
  /** Every measurement that moves the point as seen from the zero, by formula or by truing. */
  readonly reached: readonly string[];
  /** Measurements with a share in the rule; none for a point that stays. */
  readonly terms: readonly Term[];
  /** Steps down to the smallest size, then up to the largest, or those to one size only. */
  readonly steps: readonly DerivedStep[];
}

/** How far a point moves from the base to every other size, and why. */
export interface Derivation {
  readonly piece: string;
  readonly point: string;
  readonly base: string;
  /** The stack point, from which the moves count. */
  readonly zero: string;
  /** mm. */
  readonly ruler: number;
  readonly axes: readonly AxisDerivation[];
  /** Cumulative moves in mm, one a size, for a drawing. */
  readonly ladder: readonly { readonly size: string; readonly x: number; readonly y: number }[];
}

/** Where a piece without the stack point has its zero. */
const NOWHERE: FormulaChain = {
  links: [],
  measurements: [],
  together: { constant: ZERO, terms: new Map() },
};

/**
 * Derives the rules of `piece.point` for every size, or for one; `ruler` in mm. Throws InputError
 * `point-unknown` or `size-unknown`.
 */
export function derivation(
  result: Grade & Drafted,
  name: string,
  ruler: number,
  size?: string,
): Derivation {
  const { range, chart } = result;
  const { drafter } = range.draft;
  const { piece, point, p, k } = found(result, name);
  const only = size === undefined ? undefined : matchSize(size, chart.sizes);
  if (size !== undefined && only === undefined)
    throw new InputError('size-unknown', {
      what: 'the chart has no such size',
      ...wantedSizes(size, chart.sizes),
      got: size,
      place: { field: 'size' },
    });
  const index = chart.sizes.indexOf(range.base);
  const columns = drafter.measurements.map((one) => needValues(chart, one));
  const bodies = chart.sizes.map((_, i) => columns.map((column) => column[i] ?? NaN));
  const draft = drafter.draft(bodies[index] ?? [], range.base);
  const { stackPoint } = range;
  const reachedBy = measurementsThatReach(drafter, bodies, { index, draft, stackPoint });
  const movesOf = (axis: Axis): readonly number[] =>
    range.exactRules.moves.map((pieces) => pieces[p]?.[k]?.[axis] ?? NaN);
  const along = (axis: Axis): AxisDerivation => {
    const rule = range.draft.ruleFormulas[p]?.[k]?.[axis];
    const terms = [...(rule?.coefficients ?? [])]
      .filter(([, slope]) => Math.abs(slope) > NO_SLOPE)
      .map(([measurement, slope]): Term => ({ measurement, share: shareFraction(slope) }));
    const chain = formulaChain(drafter, draft, `${piece}/${point}.${axis}`);
    const zero = range.plans[p]?.index.has(stackPoint)
      ? formulaChain(drafter, draft, `${piece}/${stackPoint}.${axis}`)
      : NOWHERE;
    return {
      axis,
      kind: rule?.kind ?? 'implicit',
      rule: rule?.text ?? '',
      chain,
      fromZero: chain.together && zero.together && formLess(chain.together, zero.together),
      named: [...new Set([...chain.measurements, ...zero.measurements])],
      reached: reachedBy({ piece: p, point: k, axis }),
      terms,
      steps: derivedSteps(result, terms, movesOf(axis), ruler, only),
    };
  };
  const [x, y] = [movesOf('x'), movesOf('y')];
  return {
    piece,
    point,
    base: range.base,
    zero: range.stackPoint,
    ruler,
    axes: [along('x'), along('y')],
    ladder: chart.sizes.map((label, i) => ({ size: label, x: x[i] ?? NaN, y: y[i] ?? NaN })),
  };
}

/** The steps from the base down and up, or those on the way to `size`; `moves` and `ruler` in mm. */
function derivedSteps(
  { range, chart, display }: Grade & Drafted,
  terms: readonly Term[],
  moves: readonly number[],
  ruler: number,
  size: string | undefined,
): readonly DerivedStep[] {
  const { base } = range.exactRules;
  const drifted = addedUp(
    asSteps(moves, base).map((step) => roundTo(step, ruler)),
    base,
  );
  const last = size === undefined ? undefined : chart.sizes.indexOf(size);
  const ways = last === undefined ? [-1, 1] : [Math.sign(last - base)];
  return ways.flatMap((way) => {
    let sum = ZERO;
    const derived: DerivedStep[] = [];
    for (let i = base + way; way !== 0 && chart.sizes[i] !== undefined; i += way) {
      const parts = terms.map(({ measurement, share }) => {
        const row = chart.rows.find((one) => one.name === measurement);
        const before = lengthFraction(row?.values[i - way] ?? NaN, display.unit);
        const after = lengthFraction(row?.values[i] ?? NaN, display.unit);
        const growth = plus(after, times(before, shareFraction(-1)));
        return { before, after, growth, product: times(share, growth) };
      });
      const step = parts.reduce((all, part) => plus(all, part.product), ZERO);
      sum = plus(sum, step);
      derived.push({
        from: chart.sizes[i - way] ?? '',
        to: chart.sizes[i] ?? '',
        terms: parts,
        step,
        sum,
        move: moves[i] ?? NaN,
        rounded: roundTo(moves[i] ?? NaN, ruler),
        drifted: drifted[i] ?? NaN,
      });
      if (i === last) break;
    }
    return derived;
  });
}

/** True where the products add up to the move that the drafts give. */
export function addsUp({ sum, move }: DerivedStep, unitInMm: number): boolean {
  return Math.abs(quotient(sum) * unitInMm - move) <= STEPS_ADD_UP;
}

function found({ range: { plans } }: Grade & Drafted, name: string) {
  const place = { point: name };
  const { piece, point } = namedPoint({ text: '', place }, { text: name, place }, plans);
  const p = plans.findIndex((plan) => plan.name === piece);
  return { piece, point, p, k: plans[p]?.index.get(point) ?? -1 };
}
