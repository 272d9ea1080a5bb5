/** How many random cases a test takes, and from which seed. Runs before every test file. */
import fc from 'fast-check';

/** Set by `npm run test:long`. */
export const LONG = process.env.LONG === '1';

/** How many times more cases the long run takes. */
const MORE = 10;

/** The seed of all random tests; fast-check prints it, and the path to the case, with a failure. */
export const SEED = 20_240_229;

/** The same for a test that draws its own sample, to be told with a failure. */
export const PRINTED_SEED = `seed ${SEED}`;

/** The number of cases where `few` are enough in passing; the long run takes ten times as many. */
export function runs(few: number): number {
  return LONG ? few * MORE : few;
}

/** The first, the middle and the last of a list; the long run takes all of it. */
export function some<T>(all: readonly T[]): readonly T[] {
  const middle = Math.floor(all.length / 2);
  return LONG ? all : all.filter((_, i) => i === 0 || i === middle || i === all.length - 1);
}

fc.configureGlobal({ seed: SEED, numRuns: runs(100) });
