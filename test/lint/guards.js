/** The guards as a plugin for ESLint, and the settings under which they watch src. */
import { conversionFactor } from './conversion-factor.js';
import { docComment } from './doc-comment.js';
import { importOrder } from './import-order.js';
import { tolerance } from './tolerance.js';

/** @type {import('eslint').Linter.Config} */
export const guards = {
  files: ['src/**/*.ts'],
  plugins: {
    house: {
      rules: {
        'import-order': importOrder,
        'conversion-factor': conversionFactor,
        'doc-comment': docComment,
        tolerance,
      },
    },
  },
  rules: {
    'house/import-order': 'error',
    'house/conversion-factor': 'error',
    'house/doc-comment': 'error',
    'house/tolerance': 'error',
  },
};
