/** The library says fields, and the command line alone says options. */
import { sourcePath } from './source-path.js';

const OPTION = /--[a-z]/u;

/** @type {import('./rule.js').Rule} */
export const optionWords = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      option:
        '{{ what }} names an option: say its field, of which the command line makes the option.',
    },
  },
  create(context) {
    const file = sourcePath(context);
    if (file === undefined || file.startsWith('cli/')) return {};
    return {
      Literal(node) {
        if (typeof node.value !== 'string' || !OPTION.test(node.value)) return;
        if (!node.parent.type.startsWith('Import'))
          context.report({ node, messageId: 'option', data: { what: node.raw ?? node.value } });
      },
      TemplateElement(node) {
        if (OPTION.test(node.value.raw))
          context.report({ node, messageId: 'option', data: { what: node.value.raw } });
      },
    };
  },
};
