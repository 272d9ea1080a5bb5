/** What the page draws from the coordinates of the engine, held against the engine's own geometry. */
import { describe, expect, it } from 'vitest';
import { pieceViews } from '../../src/page/engine/piece-view';
import {
  coordinatesBetween,
  edgePath,
  foldMirror,
  netPath,
  pointAt,
  tableLayout,
} from '../../src/page/outline';
import { edgeSegments, outlineSegments } from '../../src/pattern/piece';
import { pathData } from '../../src/render/svg';
import { gradeChart } from '../../src/jobs/grade-chart';
import { readFileSync } from 'node:fs';

const { range } = gradeChart(
  { chart: readFileSync('size-charts/demo.csv', 'utf8'), base: '12', style: 'shared-pencil' },
  [],
);
const views = pieceViews(range);

describe.each(views.map((view, p) => [view.name, view, p] as const))('%s', (_, view, p) => {
  it('is drawn by the outline of every size', () => {
    range.sizes.forEach(({ pieces }, i) => {
      const piece = pieces[p];
      if (piece === undefined) throw new Error('every size has every piece');
      const { coordinates = [] } = view.sizes[i] ?? {};
      expect(netPath(view, coordinates)).toBe(pathData(outlineSegments(piece), true));
      const drawn = view.edges.map((edge) => edgePath(edge, coordinates));
      const own = piece.plan.outline.map((edge) => pathData(edgeSegments(piece, edge), false));
      expect(drawn).toEqual(own);
    });
  });

  it('is itself at a size, and halfway between two in the middle', () => {
    const [a, b] = [view.sizes[3]?.coordinates ?? [], view.sizes[4]?.coordinates ?? []];
    expect(coordinatesBetween(view.sizes, 3)).toEqual(a);
    expect(coordinatesBetween(view.sizes, 11)).toEqual(view.sizes[11]?.coordinates);
    coordinatesBetween(view.sizes, 3.5).forEach((value, i) => {
      expect(value).toBeCloseTo(((a[i] ?? 0) + (b[i] ?? 0)) / 2, 9);
    });
  });
});

it('a mirror at the fold keeps the fold and turns what is beside it over', () => {
  const front = views.find(({ name }) => name === 'front');
  if (front === undefined) throw new Error('a skirt has a front');
  const { coordinates = [] } = front.sizes[0] ?? {};
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = foldMirror(front, coordinates) ?? [];
  const fold = front.edges.find(({ kind }) => kind === 'fold')?.at ?? [];
  for (const place of fold) {
    const { x, y } = pointAt(coordinates, place);
    expect(a * x + c * y + e).toBeCloseTo(x, 9);
    expect(b * x + d * y + f).toBeCloseTo(y, 9);
  }
  expect(a * d - b * c).toBeCloseTo(-1, 9);
});

it('pieces on the table do not lie over each other', () => {
  const { zeros, width, height } = tableLayout(views, true, 1.6);
  const boxes = views.map(({ sizes, points }, p) => {
    const all = sizes.flatMap(({ coordinates }) => points.map((_, i) => pointAt(coordinates, i)));
    const zero = zeros[p] ?? { x: NaN, y: NaN };
    return {
      left: zero.x + Math.min(...all.map(({ x }) => x)),
      right: zero.x + Math.max(...all.map(({ x }) => x)),
      top: zero.y + Math.min(...all.map(({ y }) => y)),
      bottom: zero.y + Math.max(...all.map(({ y }) => y)),
    };
  });
  boxes.forEach((one, i) => {
    expect(one.left).toBeGreaterThanOrEqual(0);
    expect(one.right).toBeLessThanOrEqual(width);
    expect(one.bottom).toBeLessThanOrEqual(height);
    for (const other of boxes.slice(i + 1))
      expect(
        one.right <= other.left ||
          other.right <= one.left ||
          one.bottom <= other.top ||
          other.bottom <= one.top,
      ).toBe(true);
  });
});
