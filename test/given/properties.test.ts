import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point';
import { distance } from '../../src/geometry/point';
import { gradedPieces } from '../../src/given/grade-given';
import type { Pattern } from '../../src/pattern/pattern';
import { readPattern } from '../../src/given/read-pattern';
import type { GivenRule } from '../../src/rule-sheet/point-rules';

/** A piece with a spline, a curve by handles, a dart, a notch, a grainline and a drill hole. */
const PIECE = (reference: string): string => `# unit: mm
piece,point,x,y,kind,edge
yoke,a,0,0,corner,top
yoke,b,60,-4,curve,
yoke,c,140,-2,curve,
yoke,d,200,10,corner,side
yoke,n,205,65,notch,
yoke,e,210,120,corner,low
yoke,h1,160,150,handle,
yoke,h2,130,150,handle,
yoke,f,100,140,corner,
yoke,tip,80,90,dart,
yoke,g,70,140,corner,
yoke,i,0,120,corner,center
yoke,hole,80,95,drill,
yoke,g1,30,30,grain,
yoke,g2,30,100,grain,
${reference}`;

const OUTLINE = ['a', 'b', 'c', 'd', 'n', 'e', 'h1', 'h2', 'f', 'tip', 'g', 'i'] as const;
const PATTERN = readPattern(PIECE(''), 'yoke.csv');

const moves = fc.record({
  x: fc.double({ min: -50, max: 50, noNaN: true }),
  y: fc.double({ min: -50, max: 50, noNaN: true }),
});
const rules = fc.dictionary(fc.constantFrom(...OUTLINE), moves, { minKeys: 1 });

function places(
  pattern: Pattern,
  byName: Readonly<Record<string, Point>>,
  share = 1,
): readonly Point[] {
  const index = pattern.pieces[0]?.base.plan.index;
  const ruled = new Map<number, GivenRule>(
    Object.entries(byName).map(([name, { x, y }]) => [
      index?.get(name) ?? -1,
      { moves: [{ x: x * share, y: y * share }], text: { x: '', y: '' }, place: {} },
    ]),
  );
  return gradedPieces(pattern, { ruled: [ruled], sizes: ['one'] })[0]?.[0]?.points ?? [];
}

const BASE = PATTERN.pieces[0]?.base.points ?? [];

function expectNear(a: readonly Point[], b: readonly Point[]): void {
  expect(a).toHaveLength(b.length);
  a.forEach((p, i) => expect(distance(p, b[i] ?? { x: NaN, y: NaN })).toBeLessThan(1e-6));
}

describe('rules of any points', () => {
  it('leave the base as it is where they do not move', () => {
    fc.assert(
      fc.property(rules, (byName) => {
        expectNear(places(PATTERN, byName, 0), BASE);
      }),
    );
  });

  it('make a whole step of two half steps, at every point and handle', () => {
    fc.assert(
      fc.property(rules, (byName) => {
        const [half, whole] = [places(PATTERN, byName, 0.5), places(PATTERN, byName)];
        const twice = half.map(({ x, y }, i) => ({
          x: 2 * x - (BASE[i]?.x ?? NaN),
          y: 2 * y - (BASE[i]?.y ?? NaN),
        }));
        expectNear(twice, whole);
      }),
    );
  });

  it('carry the whole piece where all ruled points move alike', () => {
    fc.assert(
      fc.property(fc.subarray([...OUTLINE], { minLength: 1 }), moves, (names, move) => {
        // A ruled handle alone bends its curve, and no other point follows it.
        fc.pre(names.some((name) => name !== 'h1' && name !== 'h2'));
        const all = Object.fromEntries(names.map((name) => [name, move]));
        expectNear(
          places(PATTERN, all),
          BASE.map(({ x, y }) => ({ x: x + move.x, y: y + move.y })),
        );
      }),
    );
  });

  it('turn with the reference line', () => {
    fc.assert(
      fc.property(
        rules,
        fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
        (byName, angle) => {
          const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
          const line = `yoke,r1,0,0,reference,\nyoke,r2,${(1000 * cos).toFixed(9)},${(1000 * sin).toFixed(9)},reference,\n`;
          const turned = readPattern(PIECE(line), 'yoke.csv');
          const byHand = Object.fromEntries(
            Object.entries(byName).map(([name, { x, y }]) => [
              name,
              { x: x * cos - y * sin, y: x * sin + y * cos },
            ]),
          );
          expectNear(places(turned, byName), places(PATTERN, byHand));
        },
      ),
    );
  });

  it('keep a notch on its straight edge', () => {
    fc.assert(
      fc.property(moves, moves, (d, e) => {
        const points = places(PATTERN, { d, e });
        const index = PATTERN.pieces[0]?.base.plan.index;
        const [from, notch, to] = ['d', 'n', 'e'].map((name) => points[index?.get(name) ?? -1]);
        if (!from || !notch || !to) throw new Error('no such points');
        // The notch is half way, so it stays there.
        expect(distance(notch, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 })).toBeLessThan(
          1e-9,
        );
      }),
    );
  });
});
