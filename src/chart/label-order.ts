/** Whether the names of sizes by themselves say which is the larger. */

/** `up` where each name is of a larger size than the one before, `down` where of a smaller. */
export type LabelOrder = 'up' | 'down' | undefined;

/**
 * The order that labels from first to last are in: numbers with the same letters about them (`8`,
 * `14W`, `EU 40`), or `XS`, `S`, `M`, `L`, `3XL` and the like. Undefined for any others, for a
 * mixture and for names that go up and down.
 */
export function labelOrder(labels: readonly string[]): LabelOrder {
  const ranks = numbers(labels) ?? letters(labels);
  if (ranks === undefined) return undefined;
  const steps = ranks.slice(1).map((rank, i) => rank - (ranks[i] ?? rank));
  if (steps.every((step) => step === 0)) return undefined;
  if (steps.every((step) => step >= 0)) return 'up';
  return steps.every((step) => step <= 0) ? 'down' : undefined;
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
