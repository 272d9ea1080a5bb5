/** Where two edges meet at the end of a seam, they run on across it: angles from the coordinates. */
import { expect, it } from 'vitest';
import { FRONT_AND_BACK, graded } from '../given/sheets';
import { BODICE, STEPS } from '../seams/bodice';

type Vector = readonly [x: number, y: number];

function angle([ax, ay]: Vector, [bx, by]: Vector): number {
  const turn = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  return (Math.abs(turn) * 180) / Math.PI;
}

const corners = (findings: ReturnType<typeof graded>['findings'], subject: string, size: string) =>
  findings.filter(
    (finding) =>
      finding.check === 'corners-across-seam' &&
      finding.subject === subject &&
      finding.size === size,
  );

it('a waist that dips at the side seam is warned of, with the sum of its corners', () => {
  const { findings } = graded(BODICE, STEPS);
  // Front and back of size M at the waist: up the side seam, and along the waist to the center.
  const sum = angle([2, -20], [-21, 1]) + angle([2, -20], [-20.4, 1]);
  const [found, ...others] = corners(findings, 'side at front.waist_side', 'M');
  expect(others).toEqual([]);
  expect(found?.measured).toBeCloseTo(sum, 6);
  expect(found).toMatchObject({ severity: 'warning', expected: 180 });
  // In size L both go 1 cm out; the side of the bodice falls 0.6 cm at the waist and 0.4 at its top.
  const large = angle([2, -20.2], [-22, 1]) + angle([2, -20.2], [-21.4, 1]);
  expect(corners(findings, 'side at front.waist_side', 'L')[0]?.measured).toBeCloseTo(large, 6);
});

it('a level hem across an upright side seam is well', () => {
  const { findings } = graded(
    FRONT_AND_BACK,
    'piece,point,size,dx,dy\nfront,center_waist,14,0,0\n',
  );
  const [found] = corners(findings, 'side_seam at front.side_hem', '12');
  expect(found?.measured).toBeCloseTo(180, 6);
  expect(found?.severity).toBe('ok');
});
