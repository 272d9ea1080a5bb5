/** Random numbers that are the same for the same seed, whatever runs beside them. */

/** Draws; each takes the next number of the sequence. */
export interface Random {
  /** A whole number from zero up to one below this. */
  readonly below: (count: number) => number;
  /** One of a list that is not empty. */
  readonly of: <T>(list: readonly T[]) => T;
  /** True once in so many draws. */
  readonly onceIn: (count: number) => boolean;
}

/** A linear congruence: Numerical Recipes, 2nd edition, section 7.1, the quick and dirty generator. */
export function random(seed: number): Random {
  let state = seed >>> 0;
  const below = (count: number): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * count);
  };
  // The first numbers of neighboring seeds are neighbors.
  for (let i = 0; i < 4; i++) below(1);
  return {
    below,
    of: <T>(list: readonly T[]): T => list[below(list.length)] as T,
    onceIn: (count) => below(count) === 0,
  };
}
