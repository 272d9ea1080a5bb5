/** Which way round a seam is walked where neither names nor corners tell. */
import { describe, expect, it } from 'vitest';
import { graded } from '../given/sheets';
import { gradedBy, rightMoves, ruleText } from './planted/garment';
import { VEST } from './planted/vest';

describe('a vest whose princess seams run down on both pieces', () => {
  const { seams, findings } = gradedBy(VEST, ruleText(VEST, rightMoves(VEST), 'moves'));

  it.each([
    ['princess_f', 'front.arm_top', 'panel.front_top'],
    ['princess_low_f', 'front.waist_side', 'panel.front_waist'],
  ])('pairs the ends of %s that are both at the top', (name, first, second) => {
    const walk = seams.find(({ pair }) => pair.name === name)?.walks[0];
    expect(walk?.walks.map(({ ends }) => ends[0])).toEqual([first, second]);
  });

  it('runs against each other where the back panel is listed upward', () => {
    const walk = seams.find(({ pair }) => pair.name === 'princess_b')?.walks[0];
    expect(walk?.walks.map(({ ends }) => ends[0])).toEqual(['back.arm_top', 'panel.back_top']);
  });

  it('asks for no corner where the seam goes on below the waist', () => {
    const at = findings
      .filter(({ check }) => check === 'corners-across-seam')
      .map(({ subject }) => subject);
    expect(at.filter((subject) => subject.includes('waist'))).toEqual([]);
    expect(at).toContain('princess_low_f at front.hip_side');
  });

  it('notes once, in the base, what is drawn as a point, and warns of a hem that turns', () => {
    const of = (end: string) =>
      findings
        .filter(({ check, subject }) => check === 'corners-across-seam' && subject.endsWith(end))
        .map(({ severity, size }) => ({ severity, size }));
    // The straight neck edges meet at the shoulder at 254 degrees: by hand 111.9 and 142.
    expect(of('front.neck_shoulder')).toEqual([{ severity: 'note', size: '40' }]);
    expect(of('princess_low_f at front.hip_side')).toEqual([{ severity: 'warning', size: '' }]);
  });
});

it('runs as drawn where nothing else tells: both down', () => {
  const square = (piece: string, order: readonly string[], seam: string): string =>
    order
      .map((at) => {
        const [name, x, y] = at.split(' ');
        return `${piece},${piece}_${name ?? ''},${x ?? ''},${y ?? ''},corner,${name ?? ''},${name === seam ? 'joint' : ''}\n`;
      })
      .join('');
  const pattern =
    '# unit: cm\n# base: M\npiece,point,x,y,kind,edge,seam\n' +
    square('left', ['a 0 0', 'b 20 0', 'c 20 30', 'd 0 30'], 'b') +
    square('right', ['e 40 0', 'f 40 30', 'g 60 30', 'h 60 0'], 'e');
  const rules =
    '# sizes: S, M, L\npiece,point,step_dx,step_dy\nleft,left_a,0,0\nright,right_e,0,0\n';
  const [seam] = graded(pattern, rules).seams;
  expect(seam?.walks[0]?.walks.map(({ ends }) => ends[0])).toEqual([
    'left.left_b',
    'right.right_e',
  ]);
});
