/**
 * The rooms of src in their order: a file uses its own room and those before it, never one behind.
 * A name is a folder, or a file that stands loose in src. DEVELOPERS.md tells what lives in each.
 */
export const ROOMS = [
  'errors',
  'units',
  'tolerance',
  'lists',
  'geometry',
  'formula',
  'table',
  'chart',
  'standards',
  'pattern',
  'stride',
  'rule-sheet',
  'draft',
  'given',
  'grade',
  'seams',
  'measure',
  'sewing',
  'fabric',
  'check',
  'verdict',
  'dxf',
  'render',
  'print',
  'jobs',
  'bodies',
  'coverage',
  'files',
  'study/mark',
  'study/explain',
  'study/infer',
  'study/exercise',
  'index',
  'page',
  'cli',
];

/**
 * The place in `ROOMS` of a file, its path counted from src (`grade/stack.ts`, `units`); -1 if it
 * stands in none.
 * @param {string} file
 * @returns {number}
 */
export function roomOf(file) {
  const path = file.replace(/\.tsx?$/u, '');
  return ROOMS.findIndex((room) => path === room || path.startsWith(`${room}/`));
}
