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

/** The number of cases where `few` are enough in passing; the long run takes ten times as many, or `many`. */
export function runs(few: number, many = few * MORE): number {
  return LONG ? many : few;
}

/** The first and the last of a list; the long run takes all of it. */
export function some<T>(all: readonly T[]): readonly T[] {
  return LONG ? all : all.filter((_, i) => i === 0 || i === all.length - 1);
}

/**
 * A chart of one measurement a row with the columns of some of its sizes; the long run takes all.
 * Throws a RangeError for a size that the chart does not have.
 */
export function someSizes(chart: string, sizes: readonly string[]): string {
  if (LONG) return chart;
  const rows = chart.split('\n');
  const labels = rows.find((row) => row.startsWith('measurement,'))?.split(',') ?? [];
  const kept = sizes.map((size) => labels.indexOf(size));
  if (kept.includes(-1)) throw new RangeError(`not all of ${sizes.join()} are sizes of the chart`);
  return rows
    .map((row) => {
      const cells = row.split(',');
      return row.startsWith('#') || cells.length !== labels.length
        ? row
        : [0, ...kept].map((column) => cells[column]).join();
    })
    .join('\n');
}

fc.configureGlobal({ seed: SEED, numRuns: runs(60, 1000) });
