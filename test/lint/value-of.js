/** What an expression of numbers alone is worth. */

/**
 * @typedef {object} Expression what is used of an expression, be it of JavaScript or of TypeScript
 * @property {string} type
 * @property {unknown} [value]
 * @property {string} [name]
 * @property {string} [operator]
 * @property {Expression} [argument] of a sign
 * @property {Expression} [left]
 * @property {Expression} [right]
 */

/** @type {Readonly<Record<string, (a: number, b: number) => number>>} */
const ARITHMETIC = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '**': (a, b) => a ** b,
};

/**
 * The number that an expression of literals is worth; undefined for any other.
 * @param {Expression | undefined} node
 * @returns {number | undefined}
 */
export function valueOf(node) {
  if (node?.type === 'Literal') return typeof node.value === 'number' ? node.value : undefined;
  if (node?.type === 'UnaryExpression') return -(valueOf(node.argument) ?? NaN);
  if (node?.type !== 'BinaryExpression') return undefined;
  const [a, b] = [valueOf(node.left), valueOf(node.right)];
  return a === undefined || b === undefined ? undefined : ARITHMETIC[node.operator ?? '']?.(a, b);
}
