/**
 * The path of a file counted from src, with `/`; undefined outside src. No folder within src is called so.
 * @param {import('./rule.js').Context} context
 * @returns {string | undefined}
 */
export function sourcePath({ filename }) {
  const path = filename.replaceAll('\\', '/');
  const src = path.lastIndexOf('/src/');
  return src === -1 ? undefined : path.slice(src + '/src/'.length);
}
