import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crossings } from '../../src/geometry/crossings';
import { outerBoundary } from '../../src/geometry/outer-boundary';
import { parallelCurve } from '../../src/geometry/parallel';
import type { Point } from '../../src/geometry/point';
import type { Segment } from '../../src/geometry/segment';
import { windingNumber } from '../../src/geometry/winding';
import { nearest } from '../pattern/sewing-line';
import { anyCubic, casteljau, cubic, forwardCubic, sideCurve } from './curves';
import { runs } from '../samples';

function line(a: readonly [number, number], b: readonly [number, number]): Segment {
  return { kind: 'line', from: { x: a[0], y: a[1] }, to: { x: b[0], y: b[1] } };
}

function loop(...corners: readonly (readonly [number, number])[]): readonly Segment[] {
  return corners.map((corner, i) => line(corner, corners[(i + 1) % corners.length] ?? corner));
}

/** Crossings of two chains of chords, by brute force. */
function crossingsOfChords(a: readonly Point[], b: readonly Point[]): readonly Point[] {
  const found: Point[] = [];
  a.slice(1).forEach((q, i) => {
    const p = a[i] ?? q;
    b.slice(1).forEach((s, k) => {
      const r = b[k] ?? s;
      const [ux, uy, vx, vy] = [q.x - p.x, q.y - p.y, s.x - r.x, s.y - r.y];
      const turn = ux * vy - uy * vx;
      // Along each other, chords cross where curves need not.
      if (Math.abs(turn) < 0.02 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return;
      const t = ((r.x - p.x) * vy - (r.y - p.y) * vx) / turn;
      const u = ((r.x - p.x) * uy - (r.y - p.y) * ux) / turn;
      if (t >= 0 && t < 1 && u >= 0 && u < 1) found.push({ x: p.x + t * ux, y: p.y + t * uy });
    });
  });
  return found;
}

describe('crossings', () => {
  it('of two lines are where they meet, ends included', () => {
    const cross = crossings(line([0, 0], [10, 10]), line([0, 10], [10, 0]));
    expect(cross).toEqual([{ t: 0.5, u: 0.5, at: { x: 5, y: 5 } }]);
    expect(crossings(line([0, 0], [10, 0]), line([10, 0], [10, 5]))[0]?.at).toEqual({
      x: 10,
      y: 0,
    });
    expect(crossings(line([0, 0], [10, 0]), line([11, -1], [11, 5]))).toEqual([]);
  });

  it('of lines along each other are none', () => {
    expect(crossings(line([0, 0], [10, 0]), line([5, 0], [15, 0]))).toEqual([]);
  });

  it('lie on both curves, and none that chords cross clearly is missing', () => {
    fc.assert(
      fc.property(forwardCubic, forwardCubic, (a, b) => {
        const found = crossings(a, b);
        for (const { t, u, at } of found) {
          for (const p of [casteljau(a, t), casteljau(b, u)])
            expect(Math.hypot(p.x - at.x, p.y - at.y)).toBeLessThan(1e-5);
        }
        const chain = (c: typeof a) => Array.from({ length: 401 }, (_, i) => casteljau(c, i / 400));
        for (const p of crossingsOfChords(chain(a), chain(b)))
          expect(
            Math.min(...found.map(({ at }) => Math.hypot(at.x - p.x, at.y - p.y))),
          ).toBeLessThan(1.5);
      }),
      { numRuns: runs(10) },
    );
  });

  it('of curves at a small angle are found', () => {
    const a = cubic(0, 0, 30, 0, 60, 0, 90, 0);
    for (const lean of [1, 0.1, 0.01]) {
      const b = cubic(0, -lean, 30, -lean / 3, 60, lean / 3, 90, lean);
      const [found] = crossings(a, b);
      expect(found?.at.x).toBeCloseTo(45, 3);
    }
  });
});

describe('crossings near a cusp', () => {
  it('are found although the curve comes to rest at its end', () => {
    const resting = cubic(0, 0, 60, -4, 90, -11, 90, -11);
    const [found] = crossings(resting, line([60, 0], [95, -15]));
    expect(found?.t).toBeGreaterThan(0.5);
    expect(found?.t).toBeLessThan(1);
    expect(distanceToLine(found?.at)).toBeLessThan(1e-6);
  });
});

/** mm from the line of the test above. */
function distanceToLine(p: Point = { x: NaN, y: NaN }): number {
  return Math.abs(-15 * (p.x - 60) - 35 * p.y) / Math.hypot(35, 15);
}

describe('winding number', () => {
  it('counts turns, clockwise on paper', () => {
    const square = loop([0, 0], [10, 0], [10, 10], [0, 10]);
    expect(windingNumber(square, { x: 5, y: 5 })).toBe(1);
    expect(windingNumber(square, { x: 15, y: 5 })).toBe(0);
    expect(windingNumber([...square, ...square], { x: 5, y: 5 })).toBe(2);
    const back = loop([0, 0], [0, 10], [10, 10], [10, 0]);
    expect(windingNumber(back, { x: 5, y: 5 })).toBe(-1);
  });

  it('of curves is that of many chords', () => {
    fc.assert(
      fc.property(anyCubic, fc.double({ min: -400, max: 400, noNaN: true }), (curve, y) => {
        const closing: Segment = { kind: 'line', from: curve.to, to: curve.from };
        const p = { x: 3, y };
        const chain = Array.from({ length: 2001 }, (_, i) => casteljau(curve, i / 2000));
        const near = Math.min(...chain.map((q) => Math.hypot(q.x - p.x, q.y - p.y)));
        fc.pre(near > 2);
        let angle = 0;
        [...chain, curve.from].reduce((a, b) => {
          const [ax, ay, bx, by] = [a.x - p.x, a.y - p.y, b.x - p.x, b.y - p.y];
          angle += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
          return b;
        }, curve.from);
        const turns = angle / (2 * Math.PI);
        fc.pre(Math.abs(turns - Math.round(turns)) < 1e-6);
        expect(windingNumber([curve, closing], p)).toBe(Math.round(turns) + 0);
      }),
    );
  });
});

describe('outer boundary', () => {
  it('leaves a simple loop as it is', () => {
    const square = loop([0, 0], [10, 0], [10, 10], [0, 10]);
    expect(outerBoundary(square)).toBe(square);
  });

  it('drops a loop that turns the other way', () => {
    // The upper side doubles back below itself: a small loop the other way round.
    const twisted = loop([0, 0], [8, 0], [8, -3], [5, -3], [5, 5], [10, 5], [10, 10], [0, 10]);
    const corners = outerBoundary(twisted).map(({ from }) => [from.x, from.y]);
    expect(corners).not.toContainEqual([8, 0]);
    expect(corners).toContainEqual([5, 0]);
  });

  it('joins lobes that overlap', () => {
    const cross = loop(
      [0, 0],
      [20, 0],
      [20, 10],
      [-10, 10],
      [-10, 20],
      [10, 20],
      [10, -10],
      [0, -10],
    );
    const found = outerBoundary(cross);
    found.forEach(({ to }, i) => expect(found[(i + 1) % found.length]?.from).toEqual(to));
  });
});

describe('parallel curves', () => {
  it('of a side seam are within 0.05 mm of the normals, at any width', () => {
    fc.assert(
      fc.property(sideCurve, fc.double({ min: -60, max: 60, noNaN: true }), (curve, depth) => {
        const chain = parallelCurve(curve, depth);
        const drawn = chain.flatMap((part) =>
          Array.from({ length: 101 }, (_, i) => casteljau(part, i / 100)),
        );
        for (let i = 1; i < 60; i++) {
          const [a, p, b] = [-1e-6, 0, 1e-6].map((d) => casteljau(curve, i / 60 + d));
          const [dx, dy] = [(b?.x ?? 0) - (a?.x ?? 0), (b?.y ?? 0) - (a?.y ?? 0)];
          const long = Math.hypot(dx, dy);
          const exact = {
            x: (p?.x ?? 0) - (dy / long) * depth,
            y: (p?.y ?? 0) + (dx / long) * depth,
          };
          expect(nearest(exact, drawn, false)).toBeLessThan(0.05);
        }
        const ends = [chain[0]?.from, chain.at(-1)?.to];
        expect(ends.every((end) => end !== undefined && Number.isFinite(end.x))).toBe(true);
      }),
      { numRuns: runs(8) },
    );
  });

  it('of an arc are arcs within 0.01 mm, also where the width is nearly its radius', () => {
    // Four cubics would make the circle; one makes 90 degrees to 2.7 parts in ten thousand.
    const k = (4 / 3) * (Math.SQRT2 - 1) * 100;
    const arc = cubic(100, 0, 100, k, k, 100, 0, 100);
    for (const depth of [-60, -16, 16, 60, 90]) {
      for (const part of parallelCurve(arc, depth))
        for (let i = 0; i <= 20; i++) {
          const { x, y } = casteljau(part, i / 20);
          expect(Math.abs(Math.hypot(x, y) - (100 - depth))).toBeLessThan(0.028 + 0.01);
        }
    }
  });

  it('survive handles that lie on their ends', () => {
    for (const curve of [cubic(0, 0, 0, 0, 50, 10, 90, 40), cubic(0, 0, 0, 0, 90, 40, 90, 40)])
      for (const { from, leave, arrive, to } of parallelCurve(curve, 16))
        for (const p of [from, leave, arrive, to])
          expect(Number.isFinite(p.x) && Number.isFinite(p.y)).toBe(true);
  });
});
