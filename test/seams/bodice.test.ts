import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/check/finding';
import { graded } from '../given/sheets';
import { BODICE, STEPS } from './bodice';

function found(findings: readonly Finding[], check: string): readonly Finding[] {
  return findings.filter((finding) => finding.check === check);
}

describe('a bodice', () => {
  const { range, seams, findings } = graded(BODICE, STEPS);

  it('is graded and walked without a seam apart', () => {
    expect(range.sizes).toHaveLength(5);
    expect(seams.map(({ pair }) => pair.name)).toEqual(['shoulder', 'side']);
    expect(found(findings, 'seam-lengths').map(({ severity }) => severity)).toEqual(
      Array(10).fill('ok'),
    );
    expect(found(findings, 'notch-to-notch').map(({ severity }) => severity)).toEqual(
      Array(5).fill('ok'),
    );
    expect(found(findings, 'wrong-sign')).toEqual([]);
  });

  it('measures the shoulder as the straight line that it is', () => {
    const [shoulder] = seams;
    // (12 + 0.3 a size, 4.4 + 0.1 a size) cm.
    shoulder?.walks.forEach(({ walks: [front] }, i) => {
      expect(front.length).toBeCloseTo(10 * Math.hypot(12 + 0.3 * (i - 2), 4.4 + 0.1 * (i - 2)), 6);
    });
  });

  it('walks pieces that lie the same way from underarm to waist on both', () => {
    const [, side] = seams;
    expect(side?.walks[0]?.walks.map(({ ends }) => ends)).toEqual([
      ['front.underarm', 'front.waist_side'],
      ['back.underarm', 'back.waist_side'],
    ]);
  });
});

describe('a seam with ease, over two edges', () => {
  // The sleeve cap is 2 cm longer than both armholes; its length is invented to be so in the base.
  const at = 60;
  const sleeve = (length: number): string =>
    `sleeve,cap_back,0,${at},corner,cap,,,2\nsleeve,cap_front,${length},${at},corner,under,,,\nsleeve,low,${length / 2},${at + 30},corner,other,,,\n`;
  const walked = graded(BODICE, STEPS, {
    seams: {
      file: 'seams.csv',
      text: 'edge,sewn_to,ease\nfront.armhole + back.armhole,front.armhole + back.armhole,0\n',
    },
  });
  const armholes = walked.seams[2]?.walks[2]?.walks[0].length ?? NaN;

  it('holds in the base and opens where the sleeve is not graded', () => {
    const { findings } = graded(
      BODICE + sleeve(armholes / 10 + 2),
      `${STEPS},sleeve,cap_front,0,0\n`,
      {
        seams: {
          file: 'seams.csv',
          text: 'edge,sewn_to,ease\nsleeve.cap,front.armhole + back.armhole,2\n',
        },
      },
    );
    const lengths = found(findings, 'seam-lengths').filter(({ subject }) =>
      subject.startsWith('sleeve'),
    );
    expect(lengths.find(({ size }) => size === 'M')?.severity).toBe('ok');
    const large = lengths.find(({ size }) => size === 'XL');
    expect(large?.severity).toBe('fail');
    expect(large?.message).toMatch(/; one way to close it: \w+ \w+ d[xy]/u);
  });
});

describe('one wrong sign', () => {
  it.each([
    ['back,waist_side,1,0.6', 'back,waist_side,1,-0.6', 'back', 'waist_side', 'y'],
    ['front,shoulder_tip,0.5,0.1', 'front,shoulder_tip,-0.5,0.1', 'front', 'shoulder_tip', 'x'],
    ['front,underarm,1,0.4', 'front,underarm,1,-0.4', 'front', 'underarm', 'y'],
    ['back,neck_side,0.2,0', 'back,neck_side,-0.2,0', 'back', 'neck_side', 'x'],
  ])('in %s is named', (right, wrong, piece, point, axis) => {
    const [finding, ...more] = found(
      graded(BODICE, STEPS.replace(right, wrong)).findings,
      'wrong-sign',
    );
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ severity: 'fail', piece, subject: point });
    expect(finding?.message).toContain(
      `the sign of d${axis} at ${piece} ${point} is probably wrong`,
    );
    expect(finding?.message).toMatch(/it shows from size S and from size L/u);
  });

  it('in the step to one size is named with the size from which it shows', () => {
    const sized = ['XS', 'S', 'L', 'XL'].map((size) => {
      const sign = size === 'XS' || size === 'S' ? -1 : 1;
      return `,back,waist_side,${sign},${(size === 'L' ? -1 : 1) * sign * 0.6},${size}`;
    });
    const rules = STEPS.replace('step_dy', 'step_dy,size').replace(
      ',back,waist_side,1,0.6',
      sized.join('\n'),
    );
    const { findings } = graded(BODICE, rules);
    const [finding] = found(findings, 'wrong-sign');
    expect(finding).toMatchObject({ piece: 'back', subject: 'waist_side', size: 'L' });
    expect(finding?.message).toMatch(/in one step.*it shows from size L/u);
    expect(found(findings, 'step-turns')[0]).toMatchObject({ subject: 'waist_side', size: 'L' });
  });

  it('is not blamed where the base itself is apart', () => {
    const apart = BODICE.replace('back,waist_side,20.4,41.5', 'back,waist_side,20.4,42.2');
    const { findings } = graded(apart, STEPS);
    expect(found(findings, 'wrong-sign')).toEqual([]);
    expect(
      found(findings, 'seam-lengths').find(
        ({ size, subject }) => size === 'L' && subject === 'side',
      )?.message,
    ).toContain('are in the base');
  });
});
