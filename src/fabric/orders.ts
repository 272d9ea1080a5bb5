/** Orders in which shapes are set down: all that differ if they are few, otherwise a fixed choice. */

/**
 * At most `most` orders of the indices of `kinds`, the given one first, none of which has the same
 * kinds in the same order as another. If there are more than that, the rest are shuffles from a
 * generator with a fixed seed: always the same.
 */
export function orders(kinds: readonly number[], most: number): readonly (readonly number[])[] {
  const given = [...kinds.keys()];
  if (orderCount(kinds) <= most) return permutations(given, kinds);
  const random = generator(kinds.length);
  const found = new Map<string, readonly number[]>();
  for (let i = 0; i < most; i++) {
    const order = i === 0 ? given : shuffled(given, random);
    const key = order.map((index) => kinds[index]).join();
    if (!found.has(key)) found.set(key, order);
  }
  return [...found.values()];
}

/** The orders that differ: those of all items over those among the items of each kind. */
function orderCount(kinds: readonly number[]): number {
  const same = [...new Set(kinds)].map((kind) => kinds.filter((other) => other === kind).length);
  return same.reduce((count, n) => count / factorial(n), factorial(kinds.length));
}

function factorial(n: number): number {
  return n <= 1 ? 1 : n * factorial(n - 1);
}

function permutations(
  items: readonly number[],
  kinds: readonly number[],
): readonly (readonly number[])[] {
  if (items.length <= 1) return [items];
  const firsts = items.filter((item, i) => items.findIndex((o) => kinds[o] === kinds[item]) === i);
  return firsts.flatMap((first) =>
    permutations(
      items.filter((item) => item !== first),
      kinds,
    ).map((rest) => [first, ...rest]),
  );
}

/** The items in the order of a random number each. */
function shuffled(items: readonly number[], random: () => number): readonly number[] {
  return items
    .map((item) => ({ item, draw: random() }))
    .sort((a, b) => a.draw - b.draw)
    .map(({ item }) => item);
}

/** A linear congruential generator (Numerical Recipes, 2nd edition, ranqd1): values in [0, 1). */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
