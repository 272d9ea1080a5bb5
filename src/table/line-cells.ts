/** A line by itself as cells, for lists that are too long to be read as a whole. */
import type { Delimiter } from './delimiter';

/** The cells of a line; one in double quotes may have delimiters, and two quotes for one (RFC 4180). */
export function cellsOf(line: string, delimiter: Delimiter): readonly string[] {
  if (!line.includes('"')) return line.split(delimiter);
  const cells: string[] = [];
  for (let start = 0; start <= line.length;) {
    const from = start + (/^\s*/u.exec(line.slice(start))?.[0].length ?? 0);
    const quoted = line[from] === '"' ? /^"((?:[^"]|"")*)"\s*/u.exec(line.slice(from)) : null;
    const after = quoted === null ? '' : line[from + quoted[0].length];
    const isWhole = quoted !== null && (after === undefined || after === delimiter);
    const found = line.indexOf(delimiter, isWhole ? from + quoted[0].length : start);
    const end = found < 0 ? line.length : found;
    cells.push(isWhole ? (quoted[1] ?? '').replaceAll('""', '"') : line.slice(start, end));
    start = end + 1;
  }
  return cells;
}
