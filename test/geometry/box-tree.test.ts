import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Box } from '../../src/geometry/bounds';
import { boxesMeet } from '../../src/geometry/bounds';
import { boxProbe, boxSearch } from '../../src/geometry/box-tree';
import { runs } from '../samples';

const side = fc.integer({ min: 0, max: 60 });
const box = fc
  .tuple(side, side, fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 }))
  .map(([left, top, wide, high]): Box => ({ left, top, right: left + wide, bottom: top + high }));

test('finds the boxes that meet, in order, as asking each of them does', () => {
  fc.assert(
    fc.property(fc.array(box, { maxLength: 60 }), box, (boxes, near) => {
      const asked = boxes.flatMap((own, i) => (boxesMeet(own, near) ? [i] : []));
      expect(boxSearch(boxes, (own) => own)(near)).toEqual(asked);
      expect(boxProbe(boxes, (own) => own)(near, () => true)).toBe(asked.length > 0);
    }),
    { numRuns: runs(200) },
  );
});

test('asks a few of ten thousand boxes that follow each other', () => {
  let asked = 0;
  const places = Array.from({ length: 10_000 }, (_, x) => x);
  const search = boxSearch(places, (left): Box => {
    asked++;
    return { left, right: left + 1, top: 0, bottom: 1 };
  });
  asked = 0;
  expect(search({ left: 5000.5, right: 5000.5, top: 0, bottom: 1 })).toEqual([5000]);
  expect(asked).toBeGreaterThan(0);
  expect(asked).toBeLessThan(20);
});
