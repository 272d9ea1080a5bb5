/** Dimension check: a formula may not add a plain number to a length. */
import type { ConstantNode, FunctionNode, MathNode, OperatorNode, SymbolNode } from 'mathjs';
import { InputError } from '../errors';
import type { Formula } from './formula';
import { UNIT_LENGTHS } from './formula';

/** A power of length (1 a length, 0 a plain number), or `any` for the number zero. */
type Dimension = number | 'any';

/**
 * Checks that `formula` gives a quantity of dimension `expected` (1 a length, 0 a plain number),
 * where `dimensionOf` tells the dimension of each name. Throws InputError `formula-dimension`.
 */
export function checkDimension(
  formula: Formula,
  expected: 0 | 1,
  dimensionOf: (name: string) => number,
): void {
  const refuse = (what: string): never => {
    throw new InputError('formula-dimension', {
      what,
      allowed:
        'lengths with lengths, plain numbers with plain numbers; a length needs in, cm or mm',
      got: formula.text,
      place: formula.place,
    });
  };

  const same = (node: MathNode, parts: readonly Dimension[]): Dimension => {
    const known = parts.filter((part) => part !== 'any');
    if (known.some((part) => part !== known[0]))
      refuse(`"${node.toString()}" mixes a length with a plain number`);
    return known[0] ?? 'any';
  };

  const dimension = (node: MathNode): Dimension => {
    switch (node.type) {
      case 'ConstantNode':
        return (node as ConstantNode<number>).value === 0 ? 'any' : 0;
      case 'SymbolNode': {
        const { name } = node as SymbolNode;
        return UNIT_LENGTHS.has(name) ? 1 : dimensionOf(name);
      }
      case 'OperatorNode': {
        const { op, args } = node as OperatorNode;
        const parts = args.map(dimension);
        const [left = 'any', right = 'any'] = parts;
        if (op === '+' || op === '-') return same(node, parts);
        if (left === 'any') return 'any';
        if (op === '*') return right === 'any' ? 'any' : left + right;
        if (op === '/') return right === 'any' ? left : left - right;
        return left * (args[1] as ConstantNode<number>).value;
      }
      default: {
        const call = node as FunctionNode;
        const parts = call.args.map(dimension);
        const name = call.fn.name;
        if (name === 'abs' || name === 'min' || name === 'max') return same(node, parts);
        const [part = 'any'] = parts;
        if (name === 'sqrt') return part === 'any' ? 'any' : part / 2;
        if (part !== 'any' && part !== 0) refuse(`"${node.toString()}" takes a plain number`);
        return 0;
      }
    }
  };

  const got = dimension(formula.tree);
  if (got === 'any' || got === expected) return;
  refuse(
    expected === 1
      ? 'the formula must give a length, and gives none'
      : 'the formula must give a plain number, and does not',
  );
}
