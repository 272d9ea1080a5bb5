/** A rule left out: a fold that leans and a corner whose place is a guess are told by name. */
import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/check/finding';
import { graded } from '../given/sheets';

/** A vest front of our own, cut on the fold: the hem is to grow by 1 cm a size on a level line. */
const FRONT = `# unit: cm
# base: 40
piece,point,x,y,kind,edge,seam,fold
front,neck_center,0,8,corner,neck,,
front,neck_shoulder,7,0,corner,shoulder,,
front,shoulder_tip,19,4,corner,armhole,,
front,arm_mid,17,14,curve,,,
front,arm_top,21,22,corner,side,side,
front,hip_side,21,60,corner,hem,,
front,hip_center,0,60,corner,center,,fold
`;
const BACK = FRONT.split('\n')
  .filter((line) => line.startsWith('front'))
  .map((line) => line.replace('front', 'back'))
  .join('\n');

const RULES: Readonly<Record<string, string>> = {
  neck_center: '0,0',
  neck_shoulder: '0.2,0',
  shoulder_tip: '0.5,0.1',
  arm_top: '1,0.5',
  hip_side: '1,1.5',
  hip_center: '0,1.5',
};

function findings(without: string, pattern = FRONT, pieces = ['front']): readonly Finding[] {
  const rows = pieces.flatMap((piece) =>
    Object.entries(RULES).flatMap(([point, steps]) =>
      `${piece}.${point}` === without ? [] : [`${piece},${point},${steps}`],
    ),
  );
  const rules = `# sizes: 36, 38, 40, 42, 44\npiece,point,step_dx,step_dy\n${rows.join('\n')}\n`;
  return graded(pattern, rules).findings;
}

function told(all: readonly Finding[], check: string) {
  return all
    .filter((own) => own.check === check && own.severity !== 'note')
    .map(({ severity, size, subject, measured }) => ({ severity, size, subject, measured }));
}

/** A plain panel, in cm. */
const FRONT_PANEL = `# unit: cm
# base: 38
piece,point,x,y,edge
front,center_waist,0,0,waist
front,side_waist,18,-1,side
front,side_hem,24,58,hem
front,center_hem,0,58,center
`;

describe('a rule that is missing on a piece cut on the fold', () => {
  it('says nothing where no rule is missing, and notes a curve point', () => {
    const all = findings('');
    expect(told(all, 'fold-straight')).toEqual([]);
    expect(all.filter(({ check }) => check === 'point-unruled')).toMatchObject([
      { severity: 'note', subject: 'arm_mid' },
    ]);
  });

  // By hand: hip center lies 21 cm of 21 + 52 cm after hip side, which moves out by 1 cm a size,
  // on the way to neck center, which stays.
  it.each([
    ['36', 2],
    ['38', 1],
    ['42', 1],
    ['44', 2],
  ])('fails the fold of size %s by its share of %i cm', (size, out) => {
    const fold = told(findings('front.hip_center'), 'fold-straight');
    expect(fold).toHaveLength(4);
    expect(fold.find((own) => own.size === size)).toEqual({
      severity: 'fail',
      size,
      subject: 'hip_center to neck_center',
      measured: expect.closeTo(10 * out * (1 - 21 / 73), 6) as number,
    });
  });

  it.each(['neck_center', 'hip_center'])(
    'warns of the corner %s, which moves by a guess',
    (bare) => {
      const all = findings(`front.${bare}`);
      expect(told(all, 'point-unruled')).toMatchObject([{ severity: 'warning', subject: bare }]);
      expect(told(all, 'fold-straight').every(({ severity }) => severity === 'fail')).toBe(true);
      const message = all.find(({ check }) => check === 'fold-straight')?.message;
      expect(message).toContain(`cannot be cut on the fold`);
      expect(message).toContain(`${bare} has no rule`);
    },
  );

  it('fails a bare corner at which a seam comes apart', () => {
    const all = findings('back.hip_side', FRONT + BACK, ['front', 'back']);
    expect(all).toContainEqual(
      expect.objectContaining({
        severity: 'fail',
        check: 'point-unruled',
        piece: 'back',
        subject: 'hip_side',
      }),
    );
    expect(told(findings('', FRONT + BACK, ['front', 'back']), 'point-unruled')).toEqual([]);
  });

  it('fails a piece that is only carried along, and none whose other corners stay by rule', () => {
    const panel = FRONT_PANEL;
    const grows =
      '# unit: cm\npoint,axis,36,38,40\nfront.side_waist,x,-1,0,1\nfront.side_hem,x,-1,0,1\n';
    expect(told(graded(panel, grows).findings, 'piece-shifted')).toMatchObject([
      { severity: 'fail', subject: 'center_waist, center_hem' },
    ]);
    const stays = `${grows}front.center_waist,x,0,0,0\nfront.center_hem,x,0,0,0\n`;
    expect(told(graded(panel, stays).findings, 'piece-shifted')).toEqual([]);
  });

  it('leaves alone a corner between points that move alike', () => {
    const rules = `# sizes: 38, 40, 42\npiece,point,step_dx,step_dy\nfront,neck_center,0,0\nfront,hip_side,0,1\nfront,hip_center,0,1\nfront,neck_shoulder,0,0\n`;
    const all = graded(FRONT.replaceAll(',fold', ','), rules).findings;
    expect(all.find(({ subject }) => subject === 'shoulder_tip')?.severity).toBe('warning');
    const more = `${rules}front,arm_top,0,0\n`;
    expect(
      graded(FRONT, more).findings.find(
        ({ check, subject }) => check === 'point-unruled' && subject === 'shoulder_tip',
      )?.severity,
    ).toBe('note');
  });
});
