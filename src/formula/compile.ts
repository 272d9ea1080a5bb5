/** Formula to closure: a tree walked once, because evaluating the tree is far slower. */
import type { ConstantNode, FunctionNode, MathNode, OperatorNode, SymbolNode } from 'mathjs';
import type { Formula } from './formula';
import { UNIT_LENGTHS } from './formula';

/** Reads its names from numbered slots and gives one number. */
export type Evaluate = (slots: Float64Array) => number;

/**
 * Compiles a checked formula. `slotOf` gives the slot in which the value of each name will stand.
 */
export function compileFormula(formula: Formula, slotOf: (name: string) => number): Evaluate {
  return compiled(formula.tree, slotOf);
}

function compiled(node: MathNode, slotOf: (name: string) => number): Evaluate {
  switch (node.type) {
    case 'ConstantNode': {
      const { value } = node as ConstantNode<number>;
      return () => value;
    }
    case 'SymbolNode': {
      const { name } = node as SymbolNode;
      const unit = UNIT_LENGTHS.get(name);
      if (unit !== undefined) return () => unit;
      const slot = slotOf(name);
      return (slots) => slots[slot] as number;
    }
    case 'OperatorNode': {
      const { op, args } = node as OperatorNode;
      const [left, right] = args.map((part) => compiled(part, slotOf));
      return left === undefined ? () => NaN : operation(op, left, right);
    }
    default: {
      const call = node as FunctionNode;
      return application(
        call.fn.name,
        call.args.map((part) => compiled(part, slotOf)),
      );
    }
  }
}

function operation(op: string, left: Evaluate, right: Evaluate | undefined): Evaluate {
  if (right === undefined) return op === '-' ? (s) => -left(s) : left;
  switch (op) {
    case '+':
      return (s) => left(s) + right(s);
    case '-':
      return (s) => left(s) - right(s);
    case '*':
      return (s) => left(s) * right(s);
    case '/':
      return (s) => left(s) / right(s);
    default:
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
