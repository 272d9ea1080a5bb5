/**
 * The exact derivative of a linear formula, read off its tree: most formulas of a block are linear,
 * and a fraction such as 1/4 is worth keeping.
 */
import type { Formula } from './formula';
import { UNIT_LENGTHS } from './formula';
import type { Fraction } from './fraction';
import { ONE, ZERO, fraction, fractionOf, over, plus, power, times, quotient } from './fraction';
import { NO_SLOPE } from '../tolerance';
import type { FormulaTree, Operator } from './tree';
import { valueAt } from './value-at';

/** A constant plus a coefficient for each name; no coefficient is zero. */
export interface LinearForm {
  readonly constant: Fraction;
  readonly terms: ReadonlyMap<string, Fraction>;
}

/** Stands for a part that is not linear in its names. */
const CURVED = 'curved';
type Form = LinearForm | typeof CURVED;

/**
 * The formula as a linear form in the names that are no constants, or undefined if it is none.
 * `constantOf` gives the value of a constant; all names of a function's arguments must be constants.
 */
export function linearForm(
  formula: Formula,
  constantOf: (name: string) => Fraction | undefined,
): LinearForm | undefined {
  const form = (tree: FormulaTree): Form => {
    switch (tree.kind) {
      case 'number':
        return constantForm(fractionOf(tree.value));
      case 'name': {
        const { name } = tree;
        const unit = UNIT_LENGTHS.get(name);
        const constant = unit === undefined ? constantOf(name) : fractionOf(unit);
        return constant === undefined
          ? { constant: ZERO, terms: new Map([[name, ONE]]) }
          : constantForm(constant);
      }
      case 'operation': {
        const [left = CURVED, right] = tree.parts.map(form);
        return operation(tree.operator, left, right);
      }
      case 'call': {
        const { parts } = tree;
        const constants = parts
          .map(form)
          .flatMap((part) => (part !== CURVED && isConstant(part) ? [part.constant] : []));
        if (constants.length < parts.length) return CURVED;
        const value = valueAt(formula, tree, (name) => quotient(constantOf(name) ?? ZERO));
        // What min and max choose stays exact.
        const chosen = constants.find((constant) => quotient(constant) === value);
        return constantForm(chosen ?? fraction(value));
      }
    }
  };
  const found = form(formula.tree);
  return found === CURVED ? undefined : found;
}

function constantForm(constant: Fraction): LinearForm {
  return { constant, terms: new Map() };
}

function isConstant({ terms }: LinearForm): boolean {
  return terms.size === 0;
}

function isZero(form: Form): boolean {
  return form !== CURVED && isConstant(form) && form.constant.top === 0;
}

function scaled({ constant, terms }: LinearForm, factor: Fraction): LinearForm {
  if (factor.top === 0) return constantForm(ZERO);
  return {
    constant: times(constant, factor),
    terms: new Map([...terms].map(([name, coefficient]) => [name, times(coefficient, factor)])),
  };
}

/** Adds coefficients to those of the same names, and drops those that vanish. */
function sum(left: LinearForm, right: LinearForm): LinearForm {
  const terms = new Map(left.terms);
  for (const [name, coefficient] of right.terms) {
    const total = plus(terms.get(name) ?? ZERO, coefficient);
    if (total.top === 0) terms.delete(name);
    else terms.set(name, total);
  }
  return { constant: plus(left.constant, right.constant), terms };
}

/** The coefficients of forms, each form taken so many times; those that vanish are left out. */
export function summedTerms(
  parts: readonly (readonly [factor: Fraction, form: Pick<LinearForm, 'terms'>])[],
): ReadonlyMap<string, Fraction> {
  const terms = new Map<string, Fraction>();
  for (const [factor, form] of parts)
    for (const [name, coefficient] of form.terms)
      terms.set(name, plus(terms.get(name) ?? ZERO, times(factor, coefficient)));
  for (const [name, total] of terms) if (Math.abs(quotient(total)) < NO_SLOPE) terms.delete(name);
  return terms;
}

function operation(operator: Operator, left: Form, right: Form | undefined): Form {
  if (right === undefined) {
    if (left === CURVED) return CURVED;
    return operator === '-' ? scaled(left, fraction(-1)) : left;
  }
  // Nothing times anything is nothing, however curved.
  if ((operator === '*' && (isZero(left) || isZero(right))) || (operator === '/' && isZero(left)))
    return constantForm(ZERO);
  if (left === CURVED || right === CURVED) return CURVED;
  switch (operator) {
    case '+':
      return sum(left, right);
    case '-':
      return sum(left, scaled(right, fraction(-1)));
    case '*':
      if (isConstant(left)) return scaled(right, left.constant);
      return isConstant(right) ? scaled(left, right.constant) : CURVED;
    case '/':
      return isConstant(right) ? scaled(left, over(ONE, right.constant)) : CURVED;
    case '^': {
      // The exponent is a whole number.
      if (isConstant(left)) return constantForm(power(left.constant, quotient(right.constant)));
      if (right.constant.top === 0) return constantForm(ONE);
      return right.constant.top === 1 ? left : CURVED;
    }
  }
}
