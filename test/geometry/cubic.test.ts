import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cubicAt,
  cubicLength,
  cubicParameterAtLength,
  cubicPart,
  cubicTangent,
} from '../../src/geometry/cubic';
import { distance } from '../../src/geometry/point';
import { reversed, segmentAt, segmentLength, segmentTangent } from '../../src/geometry/segment';
import { anyCubic, casteljau, forwardCubic, chordLength, cubic, sideCurve } from './curves';
import { runs } from '../samples';

const share = fc.double({ min: 0, max: 1, noNaN: true });

/** Arc length of the parabola x = a v^2, y = d v for v from 0 to 1 (any calculus text). */
function parabolaLength(a: number, d: number): number {
  const root = Math.sqrt(4 * a * a + d * d);
  return root / 2 + ((d * d) / (4 * a)) * Math.log((2 * a + root) / d);
}

describe('position and direction', () => {
  it('agree with repeated linear interpolation (de Casteljau)', () => {
    fc.assert(
      fc.property(anyCubic, share, (curve, t) => {
        expect(distance(cubicAt(curve, t), casteljau(curve, t))).toBeLessThan(1e-9);
      }),
    );
  });

  it('the tangent is the slope of the curve', () => {
    fc.assert(
      fc.property(anyCubic, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (curve, t) => {
        const [before, after] = [casteljau(curve, t - 1e-4), casteljau(curve, t + 1e-4)];
        const { x, y } = cubicTangent(curve, t);
        expect(Math.abs((after.x - before.x) / 2e-4 - x)).toBeLessThan(1e-3);
        expect(Math.abs((after.y - before.y) / 2e-4 - y)).toBeLessThan(1e-3);
      }),
    );
  });

  it('a handle on its end point leaves the direction to the other handle', () => {
    const curve = cubic(0, 0, 0, 0, 3, 4, 3, 4);
    expect(cubicTangent(curve, 0)).toEqual({ x: 3, y: 4 });
    expect(cubicTangent(curve, 1)).toEqual({ x: 3, y: 4 });
  });
});

describe('arc length', () => {
  it('is that of the parabola in closed form', () => {
    for (const [takeUp, depth] of [
      [12.7, 203.2],
      [50, 180],
      [1, 250],
      [80, 100],
    ] as const) {
      const curve = cubic(
        0,
        0,
        (2 / 3) * takeUp,
        depth / 3,
        takeUp,
        (2 / 3) * depth,
        takeUp,
        depth,
      );
      expect(Math.abs(cubicLength(curve) - parabolaLength(takeUp, depth))).toBeLessThan(1e-7);
    }
  });

  it('is that of a straight line, however the handles lie on it', () => {
    expect(cubicLength(cubic(0, 0, 10, 0, 20, 0, 30, 0))).toBeCloseTo(30, 10);
    expect(cubicLength(cubic(0, 0, NaN, 0, 20, 0, 30, 0))).toBeNaN();
    expect(cubicLength(cubic(0, 0, 0, 0, 30, 40, 30, 40))).toBeCloseTo(50, 7);
    // Out to 40/9 past the end and back: x = 3t(1-t)^2 * 30 with its turn at t = 1/3.
    expect(cubicLength(cubic(0, 0, 30, 0, 0, 0, 0, 0))).toBeCloseTo((2 * 40) / 3, 6);
  });

  it('lies between the lengths of chords and of the control polygon', () => {
    fc.assert(
      fc.property(forwardCubic, (curve) => {
        const { from, leave, arrive, to } = curve;
        const polygon = distance(from, leave) + distance(leave, arrive) + distance(arrive, to);
        const length = cubicLength(curve);
        expect(length).toBeGreaterThan(chordLength(curve, 500) - 1e-6);
        expect(length).toBeLessThan(polygon + 1e-6);
      }),
    );
  });

  it('is the limit of ever more chords for side seams', () => {
    fc.assert(
      fc.property(sideCurve, (curve) => {
        // Chords fall short by a part that shrinks with the square of their number (Richardson).
        const [coarse, fine] = [chordLength(curve, 500), chordLength(curve, 1000)];
        expect(Math.abs(cubicLength(curve) - (fine + (fine - coarse) / 3))).toBeLessThan(1e-7);
      }),
      { numRuns: runs(10) },
    );
  });

  it('of a quarter circle by the published constant 0.5522847498 is 2.8 parts in 10000 off at most', () => {
    // Constant 4/3 (sqrt 2 - 1), as published for quarter circles of cubics (Riskus, Information
    // Technology and Control 35(4), 2006): the radius is right at the ends and the middle, and
    // never more than 0.000273 of itself too long.
    const r = 100;
    const k = 0.5522847498 * r;
    const quarter = cubic(r, 0, r, k, k, r, 0, r);
    const arc = (Math.PI / 2) * r;
    expect(cubicLength(quarter)).toBeGreaterThan(arc);
    expect(cubicLength(quarter)).toBeLessThan(arc * 1.000273);
    for (let t = 0; t <= 1; t += 1 / 64) {
      const { x, y } = cubicAt(quarter, t);
      expect(Math.abs(Math.hypot(x, y) / r - 1)).toBeLessThan(0.000273);
    }
  });

  it('adds up over parts, and is the same backward', () => {
    fc.assert(
      fc.property(forwardCubic, share, (curve, t) => {
        const whole = cubicLength(curve);
        expect(Math.abs(cubicLength(curve, 0, t) + cubicLength(curve, t, 1) - whole)).toBeLessThan(
          1e-6,
        );
        expect(Math.abs(segmentLength(reversed(curve)) - whole)).toBeLessThan(1e-6);
      }),
    );
  });
});

describe('parameter at a length', () => {
  it('undoes the length of a side seam', () => {
    fc.assert(
      fc.property(sideCurve, share, (curve, part) => {
        const target = part * cubicLength(curve);
        const t = cubicParameterAtLength(curve, target);
        expect(Math.abs(chordLength(curve, 4000, 0, t) - target)).toBeLessThan(1e-5);
        expect(Math.abs(cubicLength(curve, 0, t) - target)).toBeLessThan(1e-6);
      }),
      { numRuns: runs(10) },
    );
  });

  it('stays at the ends beyond them', () => {
    const curve = cubic(0, 0, 10, 0, 20, 0, 30, 0);
    expect(cubicParameterAtLength(curve, -1)).toBe(0);
    expect(cubicParameterAtLength(curve, 0)).toBe(0);
    expect(cubicParameterAtLength(curve, 31)).toBe(1);
    expect(cubicParameterAtLength(curve, 7.5)).toBeCloseTo(0.25, 7);
  });
});

describe('part of a curve', () => {
  it('runs where the whole runs', () => {
    fc.assert(
      fc.property(anyCubic, share, share, share, (curve, start, end, t) => {
        const part = { kind: 'cubic' as const, ...cubicPart(curve, start, end) };
        const expected = casteljau(curve, start + t * (end - start));
        expect(distance(segmentAt(part, t), expected)).toBeLessThan(1e-9);
      }),
    );
  });

  it('is the whole from end to end, and backward the other way', () => {
    const curve = cubic(0, 0, 10, 5, 20, 50, 30, 60);
    expect({ kind: 'cubic', ...cubicPart(curve, 0, 1) }).toEqual(curve);
    expect({ kind: 'cubic', ...cubicPart(curve, 1, 0) }).toEqual(reversed(curve));
  });
});

describe('segments', () => {
  it('a line is measured, cut and turned round like a curve', () => {
    const line = { kind: 'line', from: { x: 1, y: 2 }, to: { x: 4, y: 6 } } as const;
    expect(segmentLength(line)).toBe(5);
    expect(segmentAt(line, 0.5)).toEqual({ x: 2.5, y: 4 });
    expect(segmentTangent(line, 0.3)).toEqual({ x: 3, y: 4 });
    expect(reversed(line)).toEqual({ kind: 'line', from: { x: 4, y: 6 }, to: { x: 1, y: 2 } });
  });
});
