/**
 * What a number is held against, or is nearly nothing, stands in tolerance.ts. A constant that parts one
 * thing from another without being a tolerance says so above it: `No tolerance: ...` and what it is.
 */
import { sourcePath } from './source-path.js';
import { valueOf } from './value-of.js';

/**
 * @typedef {import('./value-of.js').Expression} Expression
 *
 * @typedef {object} Constant what is used of the declaration of one
 * @property {Expression} id
 * @property {Expression} init
 * @property {import('./rule.js').Node} parent
 *
 * @typedef {object} Call what is used of a call
 * @property {{ readonly object?: Expression, readonly property?: Expression }} callee
 * @property {readonly Expression[]} arguments
 */

const COMPARISONS = ['<', '>', '<=', '>=', '===', '!==', '==', '!='];
/** A number as small as this is a tolerance whatever is done with it. */
const NEARLY_NOTHING = 1e-3;
/** Between 0 and 1 the middle, and no bound. */
const MIDDLE = 0.5;

/**
 * The terms and factors of one side of a comparison, without their signs.
 * @param {Expression | undefined} node
 * @returns {readonly Expression[]}
 */
function partsOf(node) {
  if (node?.type === 'UnaryExpression') return partsOf(node.argument);
  if (node?.type === 'BinaryExpression' && valueOf(node) === undefined)
    return [...partsOf(node.left), ...partsOf(node.right)];
  return node === undefined ? [] : [node];
}

/** @param {number | undefined} value */
function isFraction(value) {
  return value !== undefined && !Number.isNaN(value) && !Number.isInteger(value);
}

/** @param {number | undefined} value */
function isNearlyNothing(value) {
  return isFraction(value) && Math.abs(value ?? 0) < NEARLY_NOTHING;
}

/** @type {import('./rule.js').Rule} */
export const tolerance = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      bound:
        '{{ what }} is a bound: it stands in tolerance.ts with a name, its unit and a reason, or ' +
        'has "No tolerance: ..." above it.',
    },
  },
  create(context) {
    const file = sourcePath(context);
    if (file === undefined || file === 'tolerance.ts') return {};
    /** @type {Map<string, Constant>} */
    const constants = new Map();
    /** @type {Set<string>} */
    const compared = new Set();
    /** @type {Set<Expression>} */
    const bounds = new Set();

    /** @param {Constant} constant */
    const isArgued = ({ parent }) => {
      const statement = parent.parent?.type === 'ExportNamedDeclaration' ? parent.parent : parent;
      const comment = context.sourceCode.getCommentsBefore(statement).at(-1);
      return comment?.value.includes('No tolerance: ') ?? false;
    };

    return {
      VariableDeclarator(node) {
        const constant = /** @type {Constant} */ (/** @type {unknown} */ (node));
        if (constant.id.name !== undefined && isFraction(valueOf(constant.init)))
          constants.set(constant.id.name, constant);
      },
      BinaryExpression(node) {
        if (!COMPARISONS.includes(node.operator)) return;
        const { left, right } = /** @type {Expression} */ (/** @type {unknown} */ (node));
        for (const part of [left, right].flatMap((side) => partsOf(side))) {
          if (isFraction(valueOf(part)) && valueOf(part) !== MIDDLE) bounds.add(part);
          if (part.name !== undefined) compared.add(part.name);
        }
      },
      CallExpression(node) {
        const call = /** @type {Call} */ (/** @type {unknown} */ (node));
        // The larger or the smaller of two numbers is what they are compared for.
        if (
          call.callee.object?.name !== 'Math' ||
          !/^(?:max|min)$/u.test(call.callee.property?.name ?? '')
        )
          return;
        for (const part of call.arguments.flatMap((one) => partsOf(one))) {
          if (isFraction(valueOf(part)) && valueOf(part) !== MIDDLE) bounds.add(part);
          if (part.name !== undefined) compared.add(part.name);
        }
      },
      Literal(node) {
        if (isNearlyNothing(valueOf(node))) bounds.add(node);
      },
      'Program:exit'() {
        for (const [name, constant] of constants) {
          const isBound = compared.has(name) || isNearlyNothing(valueOf(constant.init));
          if (isBound && !isArgued(constant)) bounds.add(constant.init);
          else bounds.delete(constant.init);
        }
        for (const bound of bounds) {
          const node = /** @type {import('./rule.js').Node} */ (bound);
          const what = context.sourceCode.getText(node);
          context.report({ node, messageId: 'bound', data: { what } });
        }
      },
    };
  },
};
