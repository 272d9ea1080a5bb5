/** Numbers that look drawn by chance and are the same for the same seed. */

/** Whole numbers from 0 to one below `count`. */
export type Draw = (count: number) => number;

/** A 32-bit mixing generator; good enough to vary exercises, and for nothing else. */
export function seeded(seed: number): Draw {
  let state = seed >>> 0;
  return (count) => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    mixed = (mixed ^ (mixed >>> 15)) >>> 0;
    return Math.floor((mixed / 2 ** 32) * count);
  };
}
