/** Factors between units of length stand in units.ts alone. */
import { sourcePath } from './source-path.js';
import { valueOf } from './value-of.js';

/**
 * Inch, foot, yard and point (1/72 in) in mm, cm and m, and the other way round. The inch of 25.4 mm,
 * the foot of 12 in and the yard of 36 in are those of the agreement of 1959 (NIST SP 447).
 */
const FACTORS = [25.4, 12 * 25.4, 36 * 25.4, 25.4 / 72].flatMap((mm) =>
  [mm, mm * 10, mm / 10, mm / 1000].flatMap((length) => [length, 1 / length]),
);

/** As typed with four digits, a factor is within this share of what it stands for. */
const AS_TYPED = 2e-4;

/** @typedef {import('./value-of.js').Expression} Expression */

/** @param {number} value */
function isFactor(value) {
  return FACTORS.some((factor) => Math.abs(value / factor - 1) < AS_TYPED);
}

/** @type {import('./rule.js').Rule} */
export const conversionFactor = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      factor: '{{ what }} converts a unit: take it from units.ts.',
    },
  },
  create(context) {
    const file = sourcePath(context);
    if (file === undefined || file === 'units.ts') return {};
    return {
      Literal(node) {
        const { value, parent } = node;
        if (typeof value === 'string') {
          // A text that becomes a number.
          const isRead = parent.type === 'CallExpression' || parent.type === 'UnaryExpression';
          if (isRead && value.trim() !== '' && isFactor(Number(value)))
            context.report({ node, messageId: 'factor', data: { what: value } });
          return;
        }
        if (typeof value !== 'number') return;
        // 72 is a number like any other, unless something is divided by it or multiplied.
        const isPoints =
          value === 72 && parent.type === 'BinaryExpression' && /[*/]/u.test(parent.operator);
        const what = node.raw ?? String(value);
        if (isFactor(value) || isPoints)
          context.report({ node, messageId: 'factor', data: { what } });
      },
      BinaryExpression(node) {
        const sum = /** @type {Expression} */ (/** @type {unknown} */ (node));
        const value = valueOf(sum);
        const isTold = [sum.left, sum.right].some((side) => isFactor(valueOf(side) ?? 0));
        if (value === undefined || isTold || !isFactor(value)) return;
        const what = context.sourceCode.getText(node);
        context.report({ node, messageId: 'factor', data: { what } });
      },
    };
  },
};
