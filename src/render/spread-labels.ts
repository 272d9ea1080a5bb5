/** Labels in a row: each as near to where it belongs as those beside it let it be. */

/** A label along the row, in mm: where its middle belongs, half its width, and how firmly it stands. */
export interface RowLabel {
  readonly at: number;
  readonly half: number;
  readonly weight: number;
}

interface Pool {
  readonly from: number;
  readonly weight: number;
  /** Weighted mean of places, each less the offset of its label in the row. */
  readonly mean: number;
}

/**
 * The middles of labels that keep their order and do not overlap, moved as little as can be (the sum of
 * weighted squares is the least): labels that would overlap are pooled, and stand about their mean.
 */
export function spreadLabels(labels: readonly RowLabel[]): readonly number[] {
  const offsets: number[] = [];
  labels.forEach(({ half }, i) => {
    const before = labels[i - 1];
    offsets.push(before === undefined ? 0 : (offsets[i - 1] ?? 0) + before.half + half);
  });
  const pools: Pool[] = [];
  labels.forEach(({ at, weight }, i) => {
    let pool: Pool = { from: i, weight, mean: at - (offsets[i] ?? 0) };
    for (
      let last = pools.at(-1);
      last !== undefined && last.mean > pool.mean;
      last = pools.at(-1)
    ) {
      pools.pop();
      const total = last.weight + pool.weight;
      const mean = (last.weight * last.mean + pool.weight * pool.mean) / total;
      pool = { from: last.from, weight: total, mean };
    }
    pools.push(pool);
  });
  return labels.map((_, i) => {
    const pool = pools.findLast(({ from }) => from <= i);
    return (pool?.mean ?? 0) + (offsets[i] ?? 0);
  });
}
