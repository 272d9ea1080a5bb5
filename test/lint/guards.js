/** The guards as a plugin for ESLint, and what they watch: the types all code, the others src. */
import { conversionFactor } from './conversion-factor.js';
import { docComment } from './doc-comment.js';
import { importOrder } from './import-order.js';
import { tolerance } from './tolerance.js';
import { types } from './types.js';

/** What only the page in a browser may name, and names that are easily left undeclared by a slip. */
const BROWSER_GLOBALS = [
  ...['document', 'window', 'navigator', 'location', 'localStorage', 'self', 'parent', 'top'],
  ...['name', 'event', 'length', 'status', 'origin', 'open', 'close', 'closed', 'stop', 'find'],
  ...['print', 'scroll', 'focus', 'blur', 'history', 'screen', 'fetch', 'alert', 'confirm'],
];

/** @type {import('eslint').Linter.Config[]} */
export const guards = [
  {
    plugins: {
      house: {
        rules: {
          'import-order': importOrder,
          'conversion-factor': conversionFactor,
          'doc-comment': docComment,
          tolerance,
          types,
        },
      },
    },
    rules: { 'house/types': 'error' },
  },
  {
    files: ['src/**/*.ts', 'src/**/*.tsx'],
    rules: {
      'house/import-order': 'error',
      'house/conversion-factor': 'error',
      'house/doc-comment': 'error',
      'house/tolerance': 'error',
      // What needs more lines has more than one idea.
      'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
    },
  },
  {
    // A browser has globals by these names, which TypeScript therefore knows in every room.
    files: ['src/**/*.ts'],
    ignores: ['src/page/app/**'],
    rules: { 'no-restricted-globals': ['error', ...BROWSER_GLOBALS] },
  },
];
