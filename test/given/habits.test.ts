import { describe, expect, it } from 'vitest';
import { toMillimeters } from '../../src/units';
import { resultFiles } from '../../src/files/result-files';
import { FRONT, graded, move } from './sheets';

const inch = (value: number): number => toMillimeters(value, 'in');

/** Steps of 1/4 in below the base and 3/8 in above it, in every habit. */
const SHEETS: Readonly<Record<string, string>> = {
  'moves from the base': `piece,point,size,dx,dy
front,side_hip,8,-1/2,0
front,side_hip,10,-1/4,0
front,side_hip,14,3/8,1/8
front,side_hip,16,3/4,1/4
`,
  'steps from the neighbor': `piece,point,size,step_dx,step_dy
front,side_hip,16,3/8,1/8
front,side_hip,14,3/8,1/8
front,side_hip,10,-1/4,0
front,side_hip,8,-1/4,0
`,
  'a named rule': `# sizes: 8 10 12 14 16
rule,piece,point,size,dx,dy
wide,,,8,-1/2,0
wide,,,10,-1/4,0
wide,,,14,3/8,1/8
wide,,,16,3/4,1/4
wide,front,side_hip,,,
`,
  'y up, in centimeters': `# y: up
piece;point;size;dx_cm;dy_cm
front;side_hip;8;-1,27;0
front;side_hip;10;-0,635;0
front;side_hip;14;0,9525;-0,3175
front;side_hip;16;1,905;-0,635
`,
};

describe('a rule sheet', () => {
  it.each(Object.keys(SHEETS))('is read as %s', (habit) => {
    const result = graded(FRONT, SHEETS[habit] ?? '');
    expect(result.range.sizes.map(({ label }) => label)).toEqual(['8', '10', '12', '14', '16']);
    const expected = {
      '8': [-0.5, 0],
      '10': [-0.25, 0],
      '12': [0, 0],
      '14': [0.375, 0.125],
      '16': [0.75, 0.25],
    };
    for (const [size, [dx = NaN, dy = NaN]] of Object.entries(expected)) {
      const { x, y } = move(result, size, 'front', 'side_hip');
      expect(x, size).toBeCloseTo(inch(dx), 9);
      expect(y, size).toBeCloseTo(inch(dy), 9);
    }
  });

  it('comes back as it was from the rules that were written', () => {
    const first = graded(FRONT, SHEETS['moves from the base'] ?? '');
    const written = resultFiles(first).find(({ name }) => name === 'grade-rules.csv')?.text ?? '';
    const second = graded(FRONT, written);
    first.range.sizes.forEach(({ pieces: [piece] }, i) => {
      const again = second.range.sizes[i]?.pieces[0]?.points;
      piece?.points.forEach(({ x, y }, k) => {
        expect(again?.[k]?.x).toBeCloseTo(x, 4);
        expect(again?.[k]?.y).toBeCloseTo(y, 4);
      });
    });
  });

  it('warns where a point turns back', () => {
    const slip = (SHEETS['steps from the neighbor'] ?? '').replace('16,3/8', '16,-3/8');
    const finding = graded(FRONT, slip).findings.find(({ check }) => check === 'step-turns');
    expect(finding).toMatchObject({
      severity: 'warning',
      piece: 'front',
      subject: 'side_hip',
      size: '16',
    });
  });

  it('accuses no grainline, drill hole or inside line of turning back', () => {
    const pattern = `# unit: cm
# base: M
piece,point,x,y,kind
pocket,a,0,0,
,b,14,0,
,c,14,16,
,d,0,16,
,g1,7,2,grain
,g2,7,14,grain
,hole,3,3,drill
,i1,2,2,inside
,i2,12,2,inside
`;
    const turning = ['b', 'g1', 'g2', 'hole', 'i1'].map(
      (name) => `pocket,${name},S,-1,0\npocket,${name},L,-0.5,0\n`,
    );
    const { findings } = graded(
      pattern,
      `# unit: cm\n# sizes: S, M, L\npiece,point,size,dx,dy\n${turning.join('')}`,
    );
    expect(
      findings.filter(({ check }) => check === 'step-turns').map(({ subject }) => subject),
    ).toEqual(['b']);
  });
});
