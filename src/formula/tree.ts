/** What a formula computes, as a tree of plain values. */

/** Operators of two parts; - and + also stand before one. */
export type Operator = '+' | '-' | '*' | '/' | '^';

/** A number, a name, an operation on one part or two, or a call; the power of `^` is a whole number. */
export type FormulaTree =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'operation'; readonly operator: Operator; readonly parts: Parts }
  | { readonly kind: 'call'; readonly name: string; readonly parts: Parts };

type Parts = readonly FormulaTree[];

/** How tightly an operator holds its parts; a sign before one part lies between * and ^. */
const HOLD: Readonly<Record<Operator, number>> = { '+': 1, '-': 1, '*': 2, '/': 2, '^': 4 };
const SIGN_HOLD = 3;
const ALWAYS = 5;

/** A tree as a formula, with no more parentheses than it needs. */
export function treeText(tree: FormulaTree): string {
  switch (tree.kind) {
    case 'number':
      return String(tree.value);
    case 'name':
      return tree.name;
    case 'call':
      return `${tree.name}(${tree.parts.map(treeText).join(', ')})`;
    case 'operation': {
      const { operator, parts } = tree;
      const [left, right] = parts;
      const within = (part: FormulaTree | undefined, least: number): string =>
        part === undefined ? '' : holdOf(part) < least ? `(${treeText(part)})` : treeText(part);
      if (right === undefined) return operator + within(left, SIGN_HOLD);
      // Units stand behind their numbers, and no other name is spelled so.
      if (right.kind === 'name' && right.name === 'inch') return `${within(left, SIGN_HOLD)} in`;
      if (right.kind === 'name' && /^[cm]m$/u.test(right.name))
        return `${within(left, SIGN_HOLD)} ${right.name}`;
      const hold = HOLD[operator];
      const spaced = `${within(left, hold)} ${operator} ${within(right, hold + 1)}`;
      return operator === '^' ? spaced.replaceAll(' ^ ', '^') : spaced;
    }
  }
}

function holdOf(tree: FormulaTree): number {
  if (tree.kind !== 'operation') return ALWAYS;
  return tree.parts.length === 1 ? SIGN_HOLD : HOLD[tree.operator];
}

/** Whether a name stands anywhere in a tree. */
export function uses(tree: FormulaTree, name: string): boolean {
  if (tree.kind === 'name') return tree.name === name;
  return tree.kind !== 'number' && tree.parts.some((part) => uses(part, name));
}
