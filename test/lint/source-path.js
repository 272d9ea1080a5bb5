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
