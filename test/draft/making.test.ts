/**
 * The skirt drawn again after the words of its block, and held against what the engine drew.
 * Derived; common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { STYLES, pointOf } from '../../src/index';
import type { Piece } from '../../src/index';
import { casteljau } from '../geometry/curves';
import { curveOf, everyResult } from './shaped-pieces';

const panelsOf = (pieces: readonly Piece[]): readonly Piece[] => pieces.slice(0, 2);

it('every style tells how its dart, waist, side and hem are drawn', () => {
  for (const { block } of STYLES) {
    const lines = block.making.map(({ line }) => line);
    for (const line of ['dart', 'waist', 'side', 'hem']) expect(lines).toContain(line);
    for (const { words } of block.making) expect(words).toMatch(/^[a-z].*\.$/u);
  }
});

describe.each(everyResult({ dart_closing: '0', taper_blend: '9 cm' }))(
  'the words of %s hold:',
  (_, { range }) => {
    const panels = range.sizes.flatMap(({ pieces }) => panelsOf(pieces));

    it('halfway down, the side is a quarter of its take-up inside the hip', () => {
      for (const piece of panels) {
        const [waist, hip] = [pointOf(piece, 'side_waist'), pointOf(piece, 'side_hip')];
        const middle = casteljau(curveOf(piece, 'side_waist', 'side_hip'), 0.5);
        expect(middle.y).toBeCloseTo((waist.y + hip.y) / 2, 9);
        expect(hip.x - middle.x).toBeCloseTo((hip.x - waist.x) / 4, 9);
      }
    });

    it('legs are equally long, and every stretch before a dart is the parabola of its ends', () => {
      for (const piece of panels) {
        let from = 'center_waist';
        for (const { name } of piece.plan.darts) {
          const [inner, tip, outer] = ['inner', 'tip', 'outer'].map((end) =>
            pointOf(piece, `${name}_${end}`),
          );
          if (inner === undefined || tip === undefined || outer === undefined) continue;
          const leg = (p: typeof tip): number => Math.hypot(p.x - tip.x, p.y - tip.y);
          expect(leg(inner)).toBeCloseTo(leg(outer), 9);
          const curve = curveOf(piece, from, `${name}_inner`);
          const slope = (a: typeof tip, b: typeof tip): number => (b.y - a.y) / (b.x - a.x);
          // Where the directions at its ends meet, found from each end: halfway along.
          const half = (curve.to.x - curve.from.x) / 2;
          const meets = curve.from.y + half * slope(curve.from, curve.leave);
          expect(curve.to.y - half * slope(curve.arrive, curve.to)).toBeCloseTo(meets, 9);
          const middle = casteljau(curve, 0.5);
          expect(middle.x).toBeCloseTo(curve.from.x + half, 9);
          expect(middle.y).toBeCloseTo((meets + (curve.from.y + curve.to.y) / 2) / 2, 9);
          from = `${name}_outer`;
        }
      }
    });

    it('with the darts closed, the angle at each is in proportion to its distance', () => {
      for (const piece of panels) {
        let opened = 0;
        const courses = piece.plan.darts.map(({ name }) => {
          const [inner, tip, outer] = ['inner', 'tip', 'outer'].map((end) =>
            pointOf(piece, `${name}_${end}`),
          );
          const handle = pointOf(piece, `${name}_inner_handle`);
          if (inner === undefined || tip === undefined || outer === undefined) return NaN;
          const angle = Math.atan2(handle.y - inner.y, inner.x - handle.x) + opened;
          const width = Math.hypot(outer.x - inner.x, outer.y - inner.y);
          opened += 2 * Math.asin(width / 2 / Math.hypot(inner.x - tip.x, inner.y - tip.y));
          return angle / ((inner.x + outer.x) / 2);
        });
        for (const course of courses) expect(course / (courses[0] ?? NaN)).toBeCloseTo(1, 9);
      }
    });
  },
);
