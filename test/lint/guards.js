/** The guards as a plugin of the linter; `.oxlintrc.json` says what they watch. */
import { conversionFactor } from './conversion-factor.js';
import { docComment } from './doc-comment.js';
import { importOrder } from './import-order.js';
import { optionWords } from './option-words.js';
import { tolerance } from './tolerance.js';

export default {
  meta: { name: 'house' },
  rules: {
    'import-order': importOrder,
    'conversion-factor': conversionFactor,
    'doc-comment': docComment,
    'option-words': optionWords,
    tolerance,
  },
};
