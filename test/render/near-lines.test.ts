/** Stretches of waist and hem in which lines of sizes cannot be told from each other. */
import { describe, expect, it } from 'vitest';
import { segmentsBounds } from '../../src/geometry/bounds';
import { point } from '../../src/geometry/point';
import type { Segment } from '../../src/geometry/segment';
import { segmentAt } from '../../src/geometry/segment';
import { nearRuns } from '../../src/render/near-lines';
import { drawnPieces } from '../../src/render/sheet-layout';
import { drawnSizes } from '../../src/print/plane';
import { chartText, growing } from '../skirts';
import { gradeLazily } from '../graded';

/** A panel 300 mm wide with a straight hem at a level, as far as a width. */
function panel(hem: number, width = 300, waist = 0): readonly Segment[] {
  const corners = [point(0, waist), point(width, waist), point(width, hem), point(0, hem)];
  return corners.map((from, i) => ({ kind: 'line', from, to: corners[(i + 1) % 4] ?? from }));
}

const BOX = { left: 0, right: 300 };

describe('lines near each other', () => {
  it('are told with their sizes where whoever cuts need not care', () => {
    const runs = nearRuns([panel(600), panel(600.6), panel(601.2)], BOX);
    expect(runs.map(({ ranks }) => ranks)).toEqual([[0, 1, 2]]);
    expect(runs[0]?.apart).toBeCloseTo(1.2, 9);
    expect(runs[0]?.line.from.y).toBeCloseTo(600.6, 9);
  });

  it('are not told where they are in one place, or where each can be seen', () => {
    expect(nearRuns([panel(600), panel(600)], BOX)).toEqual([]);
    // 1 mm apart, lines of 0.5 and 0.8 mm have white between them.
    expect(nearRuns([panel(600), panel(601)], BOX)).toEqual([]);
  });

  it('are told in groups no wider than 1.5 mm', () => {
    const runs = nearRuns(
      [600, 600.7, 601.4, 602.1, 602.8].map((hem) => panel(hem)),
      BOX,
    );
    expect(runs.map(({ ranks }) => ranks)).toEqual([
      [0, 1, 2],
      [3, 4],
    ]);
  });

  it('are told as far as all of them reach', () => {
    const [run, ...others] = nearRuns([panel(600, 120), panel(600.5, 300)], BOX);
    expect(others).toEqual([]);
    expect(run?.line.to.x).toBeGreaterThan(110);
    expect(run?.line.to.x).toBeLessThanOrEqual(120);
  });
});

describe('the words on the lines of twelve sizes', () => {
  const sizes = Array.from({ length: 12 }, (_, i) => `${2 + 2 * i}`);
  // Invented: 4 cm a size, all as long.
  const chart = chartText(
    'cm',
    {
      waist_girth: growing(sizes, 60, 4),
      hip_girth: growing(sizes, 86, 4),
      waist_to_hip: growing(sizes, 20, 0),
    },
    sizes,
  );
  const { title, display, range } = gradeLazily({ chart, base: '12', style: 'shared-pencil' });
  const drawing = {
    ...{ title, display, stackPoint: '', baseSize: '12' },
    sizes: range.sizes.map(({ label, pieces, cutPieces }) => ({ label, pieces, cutPieces })),
  };

  it('are said of sizes whose cut lines do lie within 1.5 mm there', () => {
    const front = drawnPieces(drawing, drawnSizes(drawing), { words: '', size: 9 }).find(
      ({ name }) => name === 'front',
    );
    const told = (front?.common ?? []).flatMap((shape) =>
      shape.kind === 'text' && shape.words.endsWith('within 1.5 mm') ? [shape] : [],
    );
    expect(told.length).toBeGreaterThan(0);
    for (const { words, at } of told) {
      const [from = NaN, to = NaN] = words.split(/-| /u).map(Number);
      const named = range.sizes.filter(({ label }) => Number(label) >= from && Number(label) <= to);
      expect(named.length).toBeGreaterThan(1);
      const levels = named.map(({ cutPieces = [] }) => {
        const cut = cutPieces.find(({ piece }) => piece.plan.name === 'front')?.cut ?? [];
        const { top, bottom } = segmentsBounds(cut);
        const isHem = at.y > (top + bottom) / 2;
        const near = cut
          .flatMap((segment) => Array.from({ length: 201 }, (_, i) => segmentAt(segment, i / 200)))
          .filter(({ x, y }) => Math.abs(x - at.x) < 2 && y > (top + bottom) / 2 === isHem);
        return near.reduce((sum, { y }) => sum + y, 0) / near.length;
      });
      expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(1.6);
    }
  });

  it('are beside lines of the side that carry their size, each next to its own', () => {
    const front = drawnPieces(drawing, drawnSizes(drawing), { words: '', size: 9 }).find(
      ({ name }) => name === 'front',
    );
    const cuts = range.sizes.map(
      ({ cutPieces = [] }) => cutPieces.find(({ piece }) => piece.plan.name === 'front')?.cut ?? [],
    );
    const { top, bottom } = segmentsBounds(cuts.flat());
    /** Where the side of a size runs at a level. */
    const sideAt = (cut: readonly Segment[], y: number): number =>
      Math.max(
        ...cut
          .flatMap((segment) => Array.from({ length: 401 }, (_, i) => segmentAt(segment, i / 400)))
          .filter((at) => Math.abs(at.y - y) < 1)
          .map((at) => at.x),
      );
    (front?.sizes ?? []).forEach((shapes, rank) => {
      const labels = shapes.flatMap((shape) =>
        shape.kind === 'text' && shape.at.y > top + 80 && shape.at.y < bottom - 80 ? [shape] : [],
      );
      const own = labels.filter(({ anchor }) => anchor === 'middle');
      // Rows are 130 mm apart, less than a sheet of A4 or Letter is high either way.
      expect(own.length).toBeGreaterThanOrEqual(2);
      for (const { at, words } of own) {
        expect(words).toBe(sizes[rank]);
        const sides = cuts.map((cut) => sideAt(cut, at.y) - at.x);
        const next = Math.min(...sides.filter((apart) => apart > 0));
        expect(sides[rank]).toBe(next);
        expect(next).toBeLessThan(5);
      }
    });
  });
});
