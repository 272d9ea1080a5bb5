/**
 * How far every named quantity of a block moves for a millimeter of each body measurement: the
 * chain rule along the order of the definitions.
 */
import type { Draft, Drafter } from '../draft/compile-block';
import type { Definition } from '../draft/definitions';
import { derivativeAt } from '../formula/derivative';
import type { Fraction } from '../formula/fraction';
import { ONE, fraction } from '../formula/fraction';
import { linearForm, summedTerms } from '../formula/linear-form';

/**
 * Partial derivatives by the measurements. `linear` ones are the same in every size, `smooth` ones
 * hold in the base size; an `implicit` quantity depends on what truing finds, or has a formula
 * without a derivative, and its terms are not known here. Absent terms are zero.
 */
export interface Gradient {
  readonly kind: 'linear' | 'smooth' | 'implicit';
  readonly terms: ReadonlyMap<string, Fraction>;
}

const CONSTANT: Gradient = { kind: 'linear', terms: new Map() };
const IMPLICIT: Gradient = { kind: 'implicit', terms: new Map() };

/** A gradient of one quantity times how much another depends on it. */
type Part = readonly [factor: Fraction, gradient: Gradient];

/**
 * The gradient of every parameter, value and coordinate under its key, such as
 * `front/side_waist.x`; `base` is the draft of the base size. What sizes take from the base
 * (`base.` names) is constant.
 */
export function blockGradients(drafter: Drafter, base: Draft): ReadonlyMap<string, Gradient> {
  const { order, keyOf } = drafter.definitions;
  const constants = new Map<string, Fraction>();
  const gradients = new Map<string, Gradient>(
    drafter.measurements.map((name) => [name, { kind: 'linear', terms: new Map([[name, ONE]]) }]),
  );

  const gradientOf = ({ key, piece, given }: Definition): Gradient => {
    if (given.by !== 'formula') return given.by === 'base' ? CONSTANT : IMPLICIT;
    const { formula } = given;
    const movedBy = (name: string): Gradient => gradients.get(keyOf(name, piece)) ?? CONSTANT;
    const form = linearForm(formula, (name) => constants.get(keyOf(name, piece)));
    if (form !== undefined) {
      if (form.terms.size === 0) constants.set(key, form.constant);
      return combined([...form.terms].map(([name, factor]) => [factor, movedBy(name)]));
    }
    const names = formula.names.filter((name) => !isConstant(movedBy(name)));
    if (names.some((name) => movedBy(name).kind === 'implicit')) return IMPLICIT;
    const parts: Part[] = [];
    for (const name of names) {
      const slope = derivativeAt(formula, name, (other) => base.valueOf(keyOf(other, piece)));
      if (slope === undefined || !Number.isFinite(slope)) return IMPLICIT;
      parts.push([fraction(slope), movedBy(name)]);
    }
    return { ...combined(parts), kind: 'smooth' };
  };

  for (const definition of order) {
    const { key } = definition;
    const gradient = gradientOf(definition);
    gradients.set(key, gradient);
    // What cancels out, or comes from the base, is constant too, though known only as a decimal.
    if (isConstant(gradient) && !constants.has(key))
      constants.set(key, fraction(base.valueOf(key)));
  }
  return gradients;
}

function isConstant({ kind, terms }: Gradient): boolean {
  return kind === 'linear' && terms.size === 0;
}

/** `gradient` less `other`, such as a point's less that of the stack point. */
export function lessGradient(gradient: Gradient, other: Gradient): Gradient {
  return combined([
    [ONE, gradient],
    [fraction(-1), other],
  ]);
}

const KINDS: readonly Gradient['kind'][] = ['linear', 'smooth', 'implicit'];

function combined(parts: readonly Part[]): Gradient {
  const kind = KINDS.findLast((candidate) => parts.some(([, part]) => part.kind === candidate));
  if (kind === 'implicit') return IMPLICIT;
  return { kind: kind ?? 'linear', terms: summedTerms(parts) };
}
