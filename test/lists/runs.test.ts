/** Runs and groups, held against what they must be by themselves: parts that add up to the whole. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { grouped } from '../../src/lists/grouped';
import { runsOf } from '../../src/lists/runs';
import { runs } from '../samples';

const NUMBERS = fc.array(fc.integer({ min: 0, max: 4 }));

it('a run goes on for as long as it is told to, and all runs are the list', () => {
  fc.assert(
    fc.property(NUMBERS, (list) => {
      const found = runsOf(list, (one, last) => one === last);
      expect(found.flat()).toEqual(list);
      for (const run of found) expect(new Set(run).size).toBe(1);
      for (const [i, run] of found.entries()) expect(run[0]).not.toBe(found[i - 1]?.[0]);
    }),
    { numRuns: runs(100) },
  );
});

it('a run is told of with the items before the last', () => {
  // No farther from the first of the run than 2.
  expect(runsOf([1, 2, 3, 4, 5], (one, _, [first = one]) => one - first <= 2)).toEqual([
    [1, 2, 3],
    [4, 5],
  ]);
});

it('groups have all items once, in their order, under their keys', () => {
  fc.assert(
    fc.property(NUMBERS, (list) => {
      const found = grouped(list, (one) => one % 2);
      expect([...found.keys()]).toEqual([...new Set(list.map((one) => one % 2))]);
      for (const [key, group] of found)
        expect(group).toEqual(list.filter((one) => one % 2 === key));
    }),
    { numRuns: runs(100) },
  );
});
