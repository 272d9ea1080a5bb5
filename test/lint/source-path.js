/**
 * Where a linted file stands, and what is known of it.
 * @typedef {{ readonly known?: readonly import('./known.js').Known[] }} RuleOption
 */

/**
 * The path of a file counted from src, with `/`; undefined outside src.
 * @param {import('eslint').Rule.RuleContext} context
 * @returns {string | undefined}
 */
export function sourcePath({ cwd, filename }) {
  const path = filename.replaceAll('\\', '/');
  const src = `${cwd.replaceAll('\\', '/')}/src/`;
  return path.startsWith(src) ? path.slice(src.length) : undefined;
}

/**
 * The entries for a file of a list such as `KNOWN` gives to a rule. `isKnown` tells whether one
 * excuses `what`; `reportRest` reports those that excused nothing.
 * @param {import('eslint').Rule.RuleContext} context
 * @param {string} file
 */
export function knownIn(context, file) {
  /** @type {unknown} */
  const given = context.options[0];
  const option = /** @type {RuleOption | undefined} */ (given);
  const names = (option?.known ?? [])
    .filter((entry) => entry.file === file)
    .map(({ what }) => what);
  /** @type {Set<string>} */
  const used = new Set();
  return {
    isKnown: (/** @type {string} */ what) => {
      if (names.includes(what)) used.add(what);
      return names.includes(what);
    },
    reportRest: (/** @type {import('eslint').AST.Program} */ node) => {
      for (const what of names.filter((name) => !used.has(name)))
        context.report({ node, messageId: 'rest', data: { what } });
    },
  };
}

/** The message of an entry that excuses nothing. */
export const REST = '{{ what }} is mended here: take it from the list of what is known.';

/**
 * The options of a rule that takes such a list.
 * @type {NonNullable<import('eslint').Rule.RuleMetaData['schema']>}
 */
export const KNOWN_OPTION = [
  { type: 'object', properties: { known: { type: 'array' } }, additionalProperties: false },
];
