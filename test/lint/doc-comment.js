/**
 * Everything that a file exports has a doc comment that says more than its name.
 *
 * @typedef {object} Statement what is used of a statement, be it of JavaScript or of TypeScript
 * @property {string} type
 * @property {import('./rule.js').Location} loc
 * @property {{ readonly name?: string } | null} [id]
 * @property {readonly { readonly id: { readonly name?: string } }[]} [declarations]
 * @property {unknown} [source]
 * @property {Statement | null} [declaration]
 * @property {readonly { readonly local: { readonly name?: string } }[]} [specifiers]
 */

const FILLERS = ['a', 'an', 'the', 'of', 'for', 'to', 'and', 'this', 'is'];

/**
 * The words of a name or a text in lower case: `sideSeam` and `the side seam` have two in common.
 * @param {string} text
 */
function wordsOf(text) {
  return (text.replace(/([a-z\d])([A-Z])/gu, '$1 $2').match(/[\p{L}\d]+/gu) ?? []).map((word) =>
    word.toLowerCase(),
  );
}

/**
 * The names that a statement declares.
 * @param {Statement} statement
 */
function namesOf({ id, declarations }) {
  return (declarations ?? [{ id: id ?? {} }]).map((one) => one.id.name ?? 'this');
}

/** @type {import('./rule.js').Rule} */
export const docComment = {
  meta: {
    type: 'suggestion',
    schema: [],
    messages: {
      missing: '{{ name }} is exported and has no doc comment right above it.',
      empty: 'The doc comment of {{ name }} says no more than its name.',
    },
  },
  create(context) {
    /**
     * The doc comment that ends on the line above; one farther up is that of the file.
     * @param {Statement} statement
     */
    const commentOf = ({ loc }) =>
      context.sourceCode
        .getAllComments()
        .find(
          (comment) =>
            comment.type === 'Block' &&
            comment.value.startsWith('*') &&
            comment.loc?.end.line === loc.start.line - 1,
        );

    /**
     * @param {Statement} statement what the comment stands above
     * @param {Statement} declaration
     */
    const check = (statement, declaration) => {
      const comment = commentOf(statement);
      for (const name of namesOf(declaration)) {
        const said = [...FILLERS, ...wordsOf(name)];
        if (comment === undefined)
          context.report({ loc: declaration.loc, messageId: 'missing', data: { name } });
        else if (wordsOf(comment.value).every((word) => said.includes(word)))
          context.report({ loc: declaration.loc, messageId: 'empty', data: { name } });
      }
    };
    return {
      Program(program) {
        const body = /** @type {readonly Statement[]} */ (/** @type {unknown} */ (program.body));
        for (const statement of body) {
          // What is passed on from another file is told there.
          if (!statement.type.startsWith('Export') || statement.source != null) continue;
          if (statement.declaration != null) check(statement, statement.declaration);
          const listed = (statement.specifiers ?? []).map(({ local }) => local.name);
          for (const declared of body)
            if (!declared.type.startsWith('Export') && !declared.type.startsWith('Import'))
              if (namesOf(declared).some((name) => listed.includes(name)))
                check(declared, declared);
        }
      },
    };
  },
};
