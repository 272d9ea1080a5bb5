/** Formula to closure: a tree walked once, because evaluating the tree is far slower. */
import type { Formula } from './formula';
import { UNIT_LENGTHS } from './formula';
import type { FormulaTree, Operator } from './tree';

/** Reads its names from numbered slots and gives one number. */
export type Evaluate = (slots: Float64Array) => number;

/**
 * Compiles a checked formula. `slotOf` gives the slot in which the value of each name will stand.
 */
export function compileFormula(formula: Formula, slotOf: (name: string) => number): Evaluate {
  return compiled(formula.tree, slotOf);
}

function compiled(tree: FormulaTree, slotOf: (name: string) => number): Evaluate {
  switch (tree.kind) {
    case 'number': {
      const { value } = tree;
      return () => value;
    }
    case 'name': {
      const unit = UNIT_LENGTHS.get(tree.name);
      if (unit !== undefined) return () => unit;
      const slot = slotOf(tree.name);
      return (slots) => slots[slot] as number;
    }
    case 'operation': {
      const [left, right] = tree.parts.map((part) => compiled(part, slotOf));
      return left === undefined ? () => NaN : operation(tree.operator, left, right);
    }
    case 'call':
      return application(
        tree.name,
        tree.parts.map((part) => compiled(part, slotOf)),
      );
  }
}

function operation(operator: Operator, left: Evaluate, right: Evaluate | undefined): Evaluate {
  if (right === undefined) return operator === '-' ? (s) => -left(s) : left;
  switch (operator) {
    case '+':
      return (s) => left(s) + right(s);
    case '-':
      return (s) => left(s) - right(s);
    case '*':
      return (s) => left(s) * right(s);
    case '/':
      return (s) => left(s) / right(s);
    case '^':
      return (s) => left(s) ** right(s);
  }
}

const APPLY: Record<string, (...values: number[]) => number> = {
  abs: Math.abs,
  sqrt: Math.sqrt,
  min: Math.min,
  max: Math.max,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  atan: Math.atan,
};

function application(name: string, args: readonly Evaluate[]): Evaluate {
  const apply = APPLY[name] ?? (() => NaN);
  return (s) => apply(...args.map((argument) => argument(s)));
}
