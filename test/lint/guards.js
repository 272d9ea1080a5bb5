/** The guards as a plugin for ESLint, and what they watch: the types all code, the others src. */
import { conversionFactor } from './conversion-factor.js';
import { docComment } from './doc-comment.js';
import { importOrder } from './import-order.js';
import { tolerance } from './tolerance.js';
import { types } from './types.js';

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
    files: ['src/**/*.ts'],
    rules: {
      'house/import-order': 'error',
      'house/conversion-factor': 'error',
      'house/doc-comment': 'error',
      'house/tolerance': 'error',
      // What needs more lines has more than one idea.
      'max-lines-per-function': ['error', { max: 60, skipBlankLines: true, skipComments: true }],
    },
  },
];
