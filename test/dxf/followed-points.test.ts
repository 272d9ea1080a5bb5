/** Which points of an exchange file need a rule: closed forms of arcs and parabolas. */
import { describe, expect, it } from 'vitest';
import { followedPoints } from '../../src/dxf/followed-points';
import type { GradedPoint } from '../../src/dxf/graded-stretch';
import { dxfFiles } from '../../src/files/dxf-files';
import type { Point } from '../../src/geometry/point';
import { point } from '../../src/geometry/point';
import { gradePattern } from '../../src/jobs/grade-pattern';
import { graded } from '../given/sheets';

const SPANS = 64;
const NOWHERE = (_: Point): boolean => false;

/** A stretch from turn to turn and straight back; `placeAt` of a share, which `moveAt` moves in the second size. */
function loop(
  placeAt: (share: number) => Point,
  moveAt: (share: number) => Point,
): readonly GradedPoint[] {
  return Array.from({ length: SPANS + 1 }, (_, k) => {
    const [at, by] = [placeAt(k / SPANS), moveAt(k / SPANS)];
    const kind = k === 0 || k === SPANS ? 'turn' : 'curve';
    return { kind, at: [at, point(at.x + by.x, at.y + by.y)] };
  });
}

const arc = (share: number): Point => {
  const angle = (share * Math.PI) / 2;
  return point(100 * Math.cos(angle), 100 * Math.sin(angle));
};
const straight = (share: number): Point => point(300 * share, 0);
const even = (share: number): Point => point(8 - 5 * share, 12 * share);

/** Which points of the stretch keep their rules, by their number in it. */
function ruled(line: readonly GradedPoint[], isShared = NOWHERE): readonly number[] {
  const followed = followedPoints(line, 0, isShared);
  return line.flatMap((own, i) => (followed.has(own) || own.kind === 'turn' ? [] : [i]));
}

describe('points that follow their neighbors', () => {
  it('are all of an arc that moves evenly along its length', () => {
    expect(ruled(loop(arc, even))).toEqual([]);
  });

  it.each([
    [0.003, []],
    // Its neighbors would be drawn along with it.
    [0.02, [19, 20, 21]],
  ])('are told apart from one that lies %f mm beside', (off, kept) => {
    const line = loop(arc, even).map((own, i): GradedPoint => {
      const [base = point(0, 0), { x, y } = base] = own.at;
      return i === 20 ? { ...own, at: [base, point(x + off, y)] } : own;
    });
    expect(ruled(line)).toEqual(kept);
  });

  it('are none that other points of the piece share a place with', () => {
    const line = loop(arc, even);
    const notch = line[7]?.at[0];
    expect(ruled(line, (at) => at === notch)).toEqual([7]);
  });

  // s (1 - s) lies h² / 4 over its chord on a part of length h: 1/256 = 0.0039 mm on an eighth, 0.0156 on a quarter.
  it('are as many of a parabola as its chords come near', () => {
    const line = loop(straight, (share) => point(0, share * (1 - share)));
    expect(ruled(line)).toEqual([8, 16, 24, 32, 40, 48, 56]);
  });

  describe('of a pattern', () => {
    const curved = `# unit: cm
# base: M
piece,point,x,y,kind,edge
panel,a,0,0,corner,top
panel,b,20,0,corner,side
panel,c,24,10,curve,
panel,d,25,20,curve,
panel,e,24,40,corner,low
panel,f,0,40,corner,left
`;
    const rules = '# sizes: S, M, L\npiece,point,step_dx,step_dy\n';
    const corners = 'panel,a,0,0\npanel,b,1,0\npanel,e,1.5,0.5\npanel,f,0,0.5\n';
    const written = (more: string) => {
      const { files } = dxfFiles(graded(curved, rules + corners + more));
      return (name: string) => ({
        file: name,
        text: files.find((own) => own.name === name)?.text ?? '',
      });
    };
    const wordsIn = (text: string): number => [...text.matchAll(/^# \d+$/gmu)].length;

    it('are those between corners that alone have rules', () => {
      expect(wordsIn(written('')('pattern.dxf').text)).toBe(4);
      // A rule of its own that its neighbors would not give stays.
      expect(wordsIn(written('panel,d,2,0\n')('pattern.dxf').text)).toBe(5);
    });

    it('are told in one note when they come back', () => {
      const file = written('');
      const { findings } = gradePattern({
        pattern: file('pattern.dxf'),
        rules: file('pattern.rul'),
      });
      expect(findings.filter(({ check }) => check === 'point-unruled')).toMatchObject([
        { severity: 'note', piece: 'panel', subject: 'curve_1 and curve_2' },
      ]);
    });
  });
});
