/**
 * Which side of the cloth is up. By hand: from behind, the wearer's right is on the right, so a half of her
 * back seen from outside has its side to the right; a lining turns its right side to the body.
 */
import { expect, it } from 'vitest';
import { pointOf } from '../../src/pattern/piece';
import { cuttings } from '../../src/render/captions';
import { demo } from '../print/printing';

it('linings of one side are drawn from outside, where their wrong side is seen, and say so', () => {
  const pieces = demo().range.sizes[0]?.pieces ?? [];
  const named = (name: string) => {
    const piece = pieces.find(({ plan }) => plan.name === name);
    if (piece === undefined) throw new RangeError(name);
    return piece;
  };
  const across = (name: string): number =>
    pointOf(named(name), 'side_hip').x - pointOf(named(name), 'center_hip').x;
  expect(across('right_back_lining')).toBeGreaterThan(0);
  expect(across('left_back_lining')).toBeLessThan(0);
  for (const name of ['right_back_lining', 'left_back_lining'])
    expect(cuttings(named(name).plan)).toEqual(['Cut 1 of lining, wrong side up']);
  expect(cuttings(named('waistband').plan)).toEqual([
    'Cut 1, right side up',
    'Cut 1 of interfacing',
  ]);
});
