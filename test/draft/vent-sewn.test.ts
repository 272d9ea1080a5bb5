/**
 * A vent folded and sewn by numbers: the shell, its extensions, the linings and the turned hems laid on
 * each other at center back as they are sewn. Seen from outside, x to the wearer's right, y down.
 */
import { describe, expect, it } from 'vitest';
import type { Point } from '../../src/geometry/point';
import type { GradeResult, Piece } from '../../src/index';
import { outlineSegments, pointOf } from '../../src/index';
import { segmentAt } from '../../src/geometry/segment';
import { gradedOnce } from '../graded';
import { cutOf } from '../pattern/cut-of';
import { pieceOf } from '../skirts';
import { CHARTS, total } from './shaped-pieces';

/** From the top of the vent outward and down to its hem. */
const ROUND = ['vent_top', 'vent_top_outer', 'vent_hem'] as const;

function round(piece: Piece): readonly Point[] {
  return ROUND.map((name) => pointOf(piece, name));
}

function lengths(way: readonly Point[]): readonly number[] {
  return way
    .slice(1)
    .map(({ x, y }, i) => Math.hypot(x - (way[i]?.x ?? NaN), y - (way[i]?.y ?? NaN)));
}

const MADE: readonly (readonly [string, GradeResult])[] = CHARTS.flatMap(({ chart, base }) =>
  [
    {},
    { vent_width: '7 cm', lining_shorter: '3 cm', vent_length: '30 cm' },
    { vent_width: '2 in', hem_taper: '-2 cm' },
    { waist_finish: '2', taper_blend: '0 cm', hem_taper: '3 cm' },
  ].map(
    (set: Readonly<Record<string, string>>) =>
      [
        `base ${base}, ${Object.keys(set).join(', ')}`,
        gradedOnce({ chart, base, style: 'shared-pencil', set }),
      ] as const,
  ),
);

describe.each(MADE)('the vent of shared-pencil, %s', (_, result) => {
  const sizes = result.range.sizes.map((size) => ({
    size,
    shell: pieceOf(result, size.label, 'back'),
    right: pieceOf(result, size.label, 'right_back_lining'),
    left: pieceOf(result, size.label, 'left_back_lining'),
  }));

  it('brings the upper edges of both extensions and both linings onto one line', () => {
    for (const { shell, right, left } of sizes) {
      // The left half is the right one turned over, and folding its extension in turns that back.
      const flat = round(shell).slice(0, 2);
      for (const other of [right, left]) expect(round(other).slice(0, 2)).toEqual(flat);
    }
  });

  it('has linings whose edges are as long as the edges of the extensions that they meet', () => {
    for (const { size, shell, right, left } of sizes) {
      const [slope = NaN, side = NaN] = lengths(round(shell));
      const shorter = size.parameters.get('lining_shorter') ?? NaN;
      expect(shorter).toBeGreaterThan(0);
      for (const lining of [right, left]) {
        const [own = NaN, down = NaN] = lengths(round(lining));
        expect(own).toBeCloseTo(slope, 6);
        expect(down).toBeCloseTo(side - shorter, 6);
        const center = (piece: Piece) =>
          total(lengths(['center_waist', 'vent_top'].map((name) => pointOf(piece, name))));
        expect(center(lining)).toBeCloseTo(center(shell), 6);
      }
    }
  });

  // Sewn at equal lengths from the top, the edges lie on each other, and not only at their ends.
  it('lets each lining lie along its extension all the way down', () => {
    for (const { shell, right, left } of sizes)
      for (const lining of [right, left]) {
        const [, outer, hem] = round(shell);
        const [, ownOuter, ownHem] = round(lining);
        expect(ownOuter).toEqual(outer);
        expect(ownHem?.x).toBe(hem?.x);
        expect(ownHem?.y).toBeLessThan(hem?.y ?? NaN);
      }
  });

  it('has nothing of the left lining over the right extension, which must come out', () => {
    for (const { shell, left } of sizes) {
      const [top, outer] = round(shell);
      const inVent = outlineSegments(left)
        .flatMap((segment) => Array.from({ length: 41 }, (__, i) => segmentAt(segment, i / 40)))
        .filter(({ x, y }) => {
          // Right of the side of the extension and below its upper edge at 45 degrees.
          const slope = (top?.y ?? NaN) - Math.max(x, outer?.x ?? NaN);
          return x > (outer?.x ?? NaN) + 1e-6 && y > slope + 1e-6;
        });
      expect(inVent).toEqual([]);
    }
  });

  it('is open: from the top down the two sides share the center line and nothing else', () => {
    for (const { shell, right } of sizes) {
      // The left side ends at its fold, x = 0; the right one goes on under it by the extension.
      const under = Math.min(...round(shell).map(({ x }) => x));
      expect(under).toBeLessThan(-19);
      expect(Math.min(...round(right).map(({ x }) => x))).toBe(under);
      expect(pointOf(shell, 'vent_top').x).toBe(0);
      expect(pointOf(shell, 'center_hem').x).toBe(0);
    }
  });

  it('has linings that cover the raw edge of the turned hem and do not show below it', () => {
    for (const { size, shell, right, left } of sizes) {
      const hem = pointOf(shell, 'vent_hem').y;
      const turnUp = hem - (size.parameters.get('hem_allowance') ?? NaN);
      // Nothing of the upper edge is caught in the turn-up.
      expect(pointOf(shell, 'vent_top_outer').y).toBeLessThan(turnUp);
      for (const lining of [right, left]) {
        const end = pointOf(lining, 'vent_hem').y;
        expect(end).toBeLessThan(hem - 9.99);
        expect(end).toBeGreaterThan(turnUp + 9.99);
      }
    }
  });

  it('has turn-ups that lie on what they are turned onto, at the extension and at the linings', () => {
    for (const { size } of sizes)
      for (const { piece, cut } of cutOf(size)) {
        if (!piece.plan.index.has('vent_hem')) continue;
        const { x: edge, y: hem } = pointOf(piece, 'vent_hem');
        const out = piece.plan.name === 'left_back_lining' ? 1 : -1;
        const points = cut.flatMap((segment) => [segment.from, segment.to]);
        const widest = (of: readonly Point[]): number => Math.max(...of.map(({ x }) => out * x));
        const near = points.filter(({ x }) => Math.abs(x - edge) < 30);
        const [above, below] = [
          near.filter(({ y }) => y < hem - 1),
          near.filter(({ y }) => y > hem + 1),
        ];
        expect(above.length).toBeGreaterThan(0);
        expect(below.length).toBeGreaterThan(0);
        expect(widest(below)).toBeCloseTo(
          out * edge + (size.parameters.get('vent_allowance') ?? NaN),
          3,
        );
      }
  });

  it('is walked by the engine as well, without a fault', () => {
    const found = result.findings.filter(({ subject }) =>
      /and (left|right) lining$/u.test(subject),
    );
    expect(found).toHaveLength(6 * sizes.length);
    expect(new Set(found.map(({ severity }) => severity))).toEqual(new Set(['ok']));
  });
});
