/** A file uses its own room and those before it. */
import { posix } from 'node:path';
import { ROOMS, roomOf } from './rooms.js';
import { sourcePath } from './source-path.js';

/** @type {import('./rule.js').Rule} */
export const importOrder = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      against: '{{ from }} stands before {{ to }} and may not use it.',
      roomless: '{{ file }} stands in no room: see the rooms in test/lint/rooms.js.',
      outside: '{{ target }} is no part of src.',
    },
  },
  create(context) {
    const file = sourcePath(context);
    if (file === undefined || file.endsWith('.d.ts')) return {};
    const from = roomOf(file);

    /** @param {{ readonly source?: unknown }} statement */
    const check = ({ source }) => {
      const node = /** @type {import('./rule.js').Node | null | undefined} */ (source);
      if (node?.type !== 'Literal' || typeof node.value !== 'string') return;
      if (!node.value.startsWith('.')) return;
      const target = posix.join(posix.dirname(file), node.value);
      // The published tables are data, and bundled as text.
      if (target.startsWith('../size-charts/')) return;
      if (target.startsWith('..')) {
        context.report({ node, messageId: 'outside', data: { target } });
        return;
      }
      const to = roomOf(target);
      if (to === -1) context.report({ node, messageId: 'roomless', data: { file: target } });
      else if (from !== -1 && to > from)
        context.report({
          node,
          messageId: 'against',
          data: { from: ROOMS[from] ?? '', to: ROOMS[to] ?? '' },
        });
    };
    return {
      ImportDeclaration: check,
      ImportExpression: check,
      ExportNamedDeclaration: check,
      ExportAllDeclaration: check,
      TSImportType: check,
      Program(node) {
        if (from === -1) context.report({ node, messageId: 'roomless', data: { file } });
      },
    };
  },
};
