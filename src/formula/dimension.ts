/** Dimension check: a formula may not add a plain number to a length. */
import { InputError } from '../errors';
import type { Formula } from './formula';
import { UNIT_LENGTHS } from './formula';
import type { FormulaTree } from './tree';
import { treeText } from './tree';

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

  const same = (tree: FormulaTree, parts: readonly Dimension[]): Dimension => {
    const known = parts.filter((part) => part !== 'any');
    if (known.some((part) => part !== known[0]))
      refuse(`"${treeText(tree)}" mixes a length with a plain number`);
    return known[0] ?? 'any';
  };

  const dimension = (tree: FormulaTree): Dimension => {
    switch (tree.kind) {
      case 'number':
        return tree.value === 0 ? 'any' : 0;
      case 'name':
        return UNIT_LENGTHS.has(tree.name) ? 1 : dimensionOf(tree.name);
      case 'operation': {
        const { operator } = tree;
        const parts = tree.parts.map(dimension);
        const [left = 'any', right = 'any'] = parts;
        if (operator === '+' || operator === '-') return same(tree, parts);
        if (left === 'any') return 'any';
        if (operator === '*') return right === 'any' ? 'any' : left + right;
        if (operator === '/') return right === 'any' ? left : left - right;
        const [, exponent] = tree.parts;
        return left * (exponent?.kind === 'number' ? exponent.value : NaN);
      }
      case 'call': {
        const { name } = tree;
        const parts = tree.parts.map(dimension);
        if (name === 'abs' || name === 'min' || name === 'max') return same(tree, parts);
        const [part = 'any'] = parts;
        if (name === 'sqrt') return part === 'any' ? 'any' : part / 2;
        if (part !== 'any' && part !== 0) refuse(`"${treeText(tree)}" takes a plain number`);
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
