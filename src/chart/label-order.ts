/** Whether the names of sizes by themselves say which is the larger. */

/**
 * Larger numbers for the names of larger sizes: numbers with the same letters about them (`8`, `14W`,
 * `EU 40`), or `XS`, `S`, `M`, `L`, `3XL` and the like. Undefined for any others, for a mixture, and
 * where all say the same.
 */
export function labelRanks(labels: readonly string[]): readonly number[] | undefined {
  const ranks = numbers(labels) ?? letters(labels);
  return ranks === undefined || new Set(ranks).size < 2 ? undefined : ranks;
}

function numbers(labels: readonly string[]): number[] | undefined {
  const parts = labels.map((label) => /^(\D*)(\d+(?:[.,]\d+)?)(\D*)$/u.exec(label.trim()));
  const about = new Set(parts.map((part) => `${part?.[1]}|${part?.[3]}`));
  if (about.size !== 1 || parts.includes(null)) return undefined;
  return parts.map((part) => Number(part?.[2]?.replace(',', '.')));
}

function letters(labels: readonly string[]): number[] | undefined {
  const ranks = labels.map((label) => {
    const [, times = '', marks = '', size] = /^(\d?)(X*)([SML])$/u.exec(label.trim()) ?? [];
    const extra = times === '' ? marks.length : Number(times);
    if (size === 'M') return times + marks === '' ? 0 : NaN;
    if (size === 'S') return -1 - extra;
    return size === 'L' ? 1 + extra : NaN;
  });
  return ranks.some(Number.isNaN) ? undefined : ranks;
}
