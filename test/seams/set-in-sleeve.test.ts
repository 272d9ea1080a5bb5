/**
 * A sleeve set into an armhole of two pieces, and a collar into a neck of two: straight edges, so that
 * every length is a difference of two numbers below. The garment is invented.
 */
import { describe, expect, it } from 'vitest';
import { expectRefusal } from '../expect-refusal';
import { graded } from '../given/sheets';

const HEAD = '# unit: cm\n# base: M\npiece,point,x,y,kind,edge,seam,fold\n';
const BODY = `front,neck_center,0,8,corner,neck,,
front,neck_side,6,0,corner,shoulder,shoulder,
front,shoulder_tip,20,4,corner,armhole,,
front,front_notch,20,18,notch,,,
front,underarm,20,24,corner,side,side,
front,waist_side,20,44,corner,waist,,
front,waist_center,0,44,corner,center_front,,fold
back,neck_center,0,2,corner,neck,,
back,neck_side,7,0,corner,shoulder,shoulder,
back,shoulder_tip,21,4,corner,armhole,,
back,upper_notch,21,16,notch,,,
back,lower_notch,21,17,notch,,,
back,underarm,21,24,corner,side,side,
back,waist_side,21,44,corner,waist,,
back,waist_center,0,44,corner,center_back,,fold
`;
// From the underarm of the back: 7, 8 (1 apart), 12 + 1.2 of ease to the crown, 14 + 0.8 to the notch, 6.
const SLEEVE = `sleeve,under_back,0,0,corner,cap,,
sleeve,back_lower,7,0,notch,,,
sleeve,back_upper,8,0,notch,,,
sleeve,crown,21.2,0,notch,,,
sleeve,front_low,36,0,notch,,,
sleeve,under_front,42,0,corner,under_f,underarm,
sleeve,wrist_front,38,50,corner,hem,,
sleeve,wrist_back,4,50,corner,under_b,underarm,
`;
// Both armholes and the cap's two halves grow by half a centimeter.
const RULES = `# sizes: S, M, L
piece,point,step_dx,step_dy
front,neck_center,0,0
front,shoulder_tip,0,0
front,underarm,0,0.5
front,waist_side,0,0.5
front,waist_center,0,0.5
back,neck_center,0,0
back,shoulder_tip,0,0
back,underarm,0,0.5
back,waist_side,0,0.5
back,waist_center,0,0.5
sleeve,under_back,-0.5,0
sleeve,crown,0,0
sleeve,under_front,0.5,0
sleeve,wrist_front,0,0
sleeve,wrist_back,0,0
`;

function sewn(seams: string, pieces = BODY + SLEEVE, rules = RULES) {
  const result = graded(HEAD + pieces, rules, { seams: { file: 'seams.csv', text: seams } });
  const seam = result.seams.at(-1);
  return {
    seam,
    base: seam?.walks[1],
    of: (check: string) =>
      result.findings.filter(
        (own) => own.check === check && own.subject.startsWith(seam?.pair.name ?? '?'),
      ),
  };
}

const CAP = 'edge,sewn_to,ease\nsleeve.cap,front.armhole + back.armhole,2 cm\n';

describe('a set-in sleeve', () => {
  it.each([
    ['as it is', CAP, SLEEVE],
    [
      'with the armholes named the other way',
      CAP.replace(/,(front.armhole) . (back.armhole)/u, ',$2 + $1'),
      SLEEVE,
    ],
    ['without a notch at the crown', CAP, SLEEVE.replace(/sleeve,crown.*\n/u, '')],
    [
      'with the course of its edges stated',
      CAP.replace('front.armhole', 'front.armhole reversed'),
      SLEEVE,
    ],
    ['with its side seam alone named', CAP, SLEEVE, BODY.replace(/,shoulder,$/gmu, ',,')],
    ['with its shoulder seam alone named', CAP, SLEEVE, BODY.replace(/,side,$/gmu, ',,')],
  ])(
    'is walked from underarm to underarm over the shoulder, %s',
    (_, seams, sleeve, body = BODY) => {
      const rules = sleeve.includes('crown') ? RULES : RULES.replace(/sleeve,crown.*\n/u, '');
      const { base, of } = sewn(seams, body + sleeve, rules);
      const second = base?.walks[1];
      expect(base?.walks.map(({ length }) => length / 10)).toEqual([42, 40].map(near));
      expect(second?.ends).toEqual(['back.underarm', 'front.underarm']);
      expect(second?.joins.map(({ name }) => name)).toEqual(['shoulder_tip']);
      expect(base?.isMatched).toBe(true);
      expect(of('seam-lengths').filter(({ severity }) => severity !== 'ok')).toEqual([]);
      expect(of('notch-to-notch').find(({ size }) => size === 'M')?.severity).toBe('ok');
      // The seam closes to a ring at the underarm: no edge runs on across it.
      if (body.includes(',side,side')) expect(of('corners-across-seam')).toEqual([]);
    },
  );

  it('meets the shoulder seam at its crown, and each notch the one that is sewn to it', () => {
    const { base } = sewn(CAP);
    expect(base?.stretches.map(({ meets, lengths: [a, b] }) => [meets[1], (a - b) / 10])).toEqual([
      ['back.lower_notch', near(0)],
      ['back.upper_notch', near(0)],
      ['back.shoulder_tip', near(1.2)],
      ['front.front_notch', near(0.8)],
      ['front.underarm', near(0)],
    ]);
  });

  const stretches = (back: string, front: string, shoulder = 'back.shoulder_tip'): string =>
    'edge,sewn_to,ease,from,to\n' +
    `sleeve.cap,front.armhole + back.armhole,${back},sleeve.back_upper,sleeve.crown\n` +
    `back.armhole + front.armhole,sleeve.cap,-${front},front.front_notch,${shoulder}\n`;

  it('has its ease by stretch, told from either side', () => {
    const { seam, of } = sewn(stretches('1.2', '0.8'));
    expect(seam?.pair.ease).toBeCloseTo(20, 9);
    expect(of('notch-to-notch').find(({ size }) => size === 'M')?.severity).toBe('ok');
    const named = sewn(stretches('1.2', '0.8', 'front.shoulder_tip'));
    expect(named.base?.stretches.map(({ ease }) => ease)).toEqual(
      sewn(stretches('1.2', '0.8')).base?.stretches.map(({ ease }) => ease),
    );
    const swapped = sewn(stretches('0.8', '1.2')).of('notch-to-notch');
    const other = swapped.find(({ size }) => size === 'M');
    expect(other?.severity).toBe('fail');
    expect(other?.message).toContain('from sleeve.back_upper to sleeve.crown the sides are 0.4 cm');
  });

  it.each([
    ['sleeve.back_upper,sleeve.front_low', 'point-unknown', 1, 'sleeve.crown to sleeve.front_low'],
    ['sleeve.back_upper,', 'sheet-malformed', 5, 'not named with its piece'],
    ['sleeve.back_upper,sleeve.elbow', 'point-unknown', 5, 'no such point'],
  ] as const)('refuses the ease of %s', (ends, code, column, words) => {
    const list = `edge,sewn_to,ease,from,to\nsleeve.cap,front.armhole + back.armhole,1,${ends}\n`;
    expectRefusal(() => sewn(list), code, { file: 'seams.csv', row: 2, column }, words);
  });
});

it.each([
  ['with a notch at the shoulder', (collar: string) => collar, 'center_front,,fold'],
  // Its center back meets that of the back by the fold, since the front has none.
  ['without any', (collar: string) => collar.replace(/.*notch.*\n/u, ''), 'center_front,,'],
])('a collar is walked over the shoulder seam that is sewn before it, %s', (_, cut, front) => {
  // Half necks of 10 cm and of the square root of 53 cm, and half a collar as long.
  const long = 10 + Math.sqrt(53);
  const collar =
    `collar,center,0,0,corner,neckline,,\ncollar,at_shoulder,${Math.sqrt(53)},0,notch,,,\n` +
    `collar,front_end,${long},0,corner,end,,\ncollar,tip,${long},-5,corner,edge,,\n` +
    'collar,center_top,0,-5,corner,center,,fold\n';
  const rules = `${RULES.replace(/sleeve.*\n/gu, '')}collar,center,0,0\n`;
  const { base, of } = sewn(
    'edge,sewn_to\ncollar.neckline,front.neck + back.neck\n',
    BODY.replace('center_front,,fold', front) + cut(collar),
    rules,
  );
  expect(base?.walks[1].ends).toEqual(['back.neck_center', 'front.neck_center']);
  if (front.endsWith('fold'))
    expect(base?.stretches.map(({ meets }) => meets)).toEqual([
      ['back.neck_center', 'back.neck_side'],
      ['back.neck_side', 'front.neck_center'],
    ]);
  expect(
    of('notch-to-notch').filter(({ size, severity }) => size === 'M' && severity !== 'ok'),
  ).toEqual([]);
});

function near(value: number): unknown {
  return expect.closeTo(value, 9);
}
