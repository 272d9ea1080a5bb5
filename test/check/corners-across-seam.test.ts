/** Where two edges meet at the end of a seam, they run on across it: angles from the coordinates. */
import { expect, it } from 'vitest';
import { FRONT_AND_BACK, graded } from '../given/sheets';
import { BODICE, STEPS } from '../seams/bodice';

const SIZES = ['XS', 'S', 'M', 'L', 'XL'];

type Vector = readonly [x: number, y: number];

function angle([ax, ay]: Vector, [bx, by]: Vector): number {
  const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  return (Math.abs(turn) * 180) / Math.PI;
}

const corners = (findings: ReturnType<typeof graded>['findings'], seam: string) =>
  findings.filter(
    ({ check, subject }) => check === 'corners-across-seam' && subject.startsWith(seam),
  );

it('a waist that dips at the side seam is warned of once, with the size in which it dips most', () => {
  // Up the side seam and along the waist to the center, on front and back. A size up both go 1 cm out;
  // the side falls 0.6 cm at the waist and 0.4 at its top.
  const sums = [-2, -1, 0, 1, 2].map((up) => {
    const side: Vector = [2, -20 - 0.2 * up];
    return angle(side, [-21 - up, 1]) + angle(side, [-20.4 - up, 1]);
  });
  const found = corners(graded(BODICE, STEPS).findings, 'side at front.waist_side');
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({ severity: 'warning', expected: 180, size: '' });
  expect(found[0]?.measured).toBeCloseTo(Math.max(...sums), 6);
  expect(found[0]?.message).toContain(
    `degrees instead of 180 in ${SIZES[sums.indexOf(Math.max(...sums))] ?? ''}`,
  );
});

it('tells of the sizes in which a rule makes the dip, and of no other', () => {
  const rules =
    'point,axis,10,12,14,16\nfront.center_waist,dx,0,0,0,0\nfront.center_hem,dy,0,0,2.25,2.25\n';
  const warned = corners(
    graded(FRONT_AND_BACK, rules).findings,
    'side_seam at front.side_hem',
  ).filter(({ severity }) => severity === 'warning');
  expect(warned.map(({ size }) => size)).toEqual(['14-16']);
});

it('a level hem across an upright side seam is well', () => {
  const { findings } = graded(
    FRONT_AND_BACK,
    'piece,point,size,dx,dy\nfront,center_waist,14,0,0\n',
  );
  const [found, ...others] = corners(findings, 'side_seam').filter(
    ({ severity }) => severity === 'ok',
  );
  expect(others).toEqual([]);
  expect(found?.subject).toContain('front.side_hem');
  expect(found?.severity).toBe('ok');
});
