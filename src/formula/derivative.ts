/** The exact derivative of one formula by one of its names, where its names have values. */
import type { Formula } from './formula';
import type { FormulaTree, Operator } from './tree';
import { uses } from './tree';
import { valueAt } from './value-at';

/**
 * The derivative of `formula` by `name` where its names have these values; not finite at a kink such as
 * that of `abs`, and undefined where there is no rule for it: where the name is in a `min` or `max`.
 */
export function derivativeAt(
  formula: Formula,
  name: string,
  valueOf: (name: string) => number,
): number | undefined {
  const value = (tree: FormulaTree): number => valueAt(formula, tree, valueOf);
  const slope = (tree: FormulaTree): number => {
    if (!uses(tree, name)) return 0;
    if (tree.kind === 'operation') return slopeOfOperation(tree.operator, tree.parts, value, slope);
    const [inner] = tree.kind === 'call' ? tree.parts : [];
    if (tree.kind !== 'call' || inner === undefined) return 1;
    return slope(inner) * slopeOfFunction(tree.name, value(inner));
  };
  return isChosen(formula.tree, name) ? undefined : slope(formula.tree);
}

type OfTree = (tree: FormulaTree) => number;

/** By the rules of sums, products, quotients and powers. */
function slopeOfOperation(
  operator: Operator,
  [left, right]: readonly FormulaTree[],
  value: OfTree,
  slope: OfTree,
): number {
  if (left === undefined) return NaN;
  if (right === undefined) return operator === '-' ? -slope(left) : slope(left);
  switch (operator) {
    case '+':
      return slope(left) + slope(right);
    case '-':
      return slope(left) - slope(right);
    case '*':
      return slope(left) * value(right) + value(left) * slope(right);
    case '/':
      return (slope(left) * value(right) - value(left) * slope(right)) / value(right) ** 2;
    case '^': {
      const power = value(right);
      return power === 0 ? 0 : power * slope(left) * value(left) ** (power - 1);
    }
  }
}

/** The derivative of a function of one number. */
function slopeOfFunction(name: string, at: number): number {
  switch (name) {
    case 'abs':
      return Math.abs(at) / at;
    case 'sqrt':
      return 1 / (2 * Math.sqrt(at));
    case 'sin':
      return Math.cos(at);
    case 'cos':
      return -Math.sin(at);
    case 'tan':
      return (1 / Math.cos(at)) ** 2;
    case 'atan':
      return 1 / (at ** 2 + 1);
    default:
      return NaN;
  }
}

function isChosen(tree: FormulaTree, name: string): boolean {
  if (tree.kind === 'number' || tree.kind === 'name') return false;
  const isChoice = tree.kind === 'call' && (tree.name === 'min' || tree.name === 'max');
  return (isChoice && uses(tree, name)) || tree.parts.some((part) => isChosen(part, name));
}
