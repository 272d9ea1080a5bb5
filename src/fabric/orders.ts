/** Orders in which shapes are set down: all of them if they are few, otherwise a fixed choice. */

/**
 * At most `most` orders of the indices 0 to `count - 1`, the given one first. If there are more
 * orders than that, the rest are shuffles from a generator with a fixed seed: always the same.
 */
export function orders(count: number, most: number): readonly (readonly number[])[] {
  const given = Array.from({ length: count }, (_, i) => i);
  if (factorial(count) <= most) return permutations(given);
  const random = generator(count);
  return Array.from({ length: most }, (_, i) => (i === 0 ? given : shuffled(given, random)));
}

function factorial(n: number): number {
  return n <= 1 ? 1 : n * factorial(n - 1);
}

function permutations(items: readonly number[]): readonly (readonly number[])[] {
  if (items.length <= 1) return [items];
  return items.flatMap((first) =>
    permutations(items.filter((item) => item !== first)).map((rest) => [first, ...rest]),
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
