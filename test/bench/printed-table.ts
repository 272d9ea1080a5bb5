/** Tables on the terminal: words to the left, numbers to the right. */
import type { Spread } from './cost';

export function printTable(
  title: string,
  heads: readonly string[],
  rows: readonly (readonly string[])[],
): void {
  const all = [heads, ...rows];
  const widths = heads.map((_, c) => Math.max(...all.map((row) => (row[c] ?? '').length)));
  console.log(`\n${title}`);
  for (const row of all) {
    const cells = widths.map((width, c) =>
      c === 0 ? (row[c] ?? '').padEnd(width) : (row[c] ?? '').padStart(width),
    );
    console.log(`  ${cells.join('  ')}`.trimEnd());
  }
}

/** A ratio or an exponent, in three figures. */
export function ratioText(ratio: number): string {
  if (ratio >= 100) return ratio.toFixed(0);
  if (ratio >= 10) return ratio.toFixed(1);
  return ratio.toFixed(ratio < 1 ? 3 : 2);
}

/** The heads of `spreadCells`. */
export const SPREAD_HEADS = ['ratio', 'least', 'most'];

export function spreadCells({ least, median, most }: Spread): readonly string[] {
  return [median, least, most].map(ratioText);
}

/** Milliseconds, or megabytes. */
export function amount(value: number): string {
  return value.toFixed(value < 10 ? 1 : 0);
}
