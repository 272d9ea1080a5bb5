/** Marks of many sizes: each told, no two in one place unless all are, labels near their marks. */
import { describe, expect, it } from 'vitest';
import { drawnPieces } from '../../src/render/sheet-layout';
import type { PathShape, Shape, TextShape } from '../../src/render/scene';
import { INK } from '../../src/render/size-style';
import { spreadLabels } from '../../src/render/spread-labels';
import { drawnSizes } from '../../src/print/plane';
import { LONG } from '../samples';
import { chartText, growing } from '../skirts';
import { gradeLazily } from '../graded';

/** A range of `count` sizes in inches that begins with such a body and grows by `step` from each to the next, invented. */
function drawn(
  count: number,
  style: string,
  { waist, depth, step, base } = { waist: 24, depth: 7.5, step: 2, base: '6' },
) {
  const sizes = Array.from({ length: count }, (_, i) => `${4 + 2 * i}`);
  const chart = chartText(
    'in',
    {
      waist_girth: growing(sizes, waist, step),
      hip_girth: growing(sizes, 34, step),
      waist_to_hip: growing(sizes, depth, 1 / 16),
    },
    sizes,
  );
  const set = { back_darts: '2' };
  const { title, display, range } = gradeLazily({ chart, base, style, set });
  const drawing = {
    ...{ title, display, stackPoint: '', baseSize: base },
    sizes: range.sizes.map(({ label, pieces, cutPieces }) => ({ label, pieces, cutPieces })),
  };
  const pieces = drawnPieces(drawing, drawnSizes(drawing), { words: '', size: 9 });
  return { sizes, pieces };
}

const isPath =
  (part: string) =>
  (shape: Shape): shape is PathShape =>
    shape.kind === 'path' && shape.part === part;
const isText = (shape: Shape): shape is TextShape => shape.kind === 'text';

/** The middle of a mark. */
function middle({ segments }: PathShape): readonly [number, number] {
  const ends = segments.flatMap(({ from, to }) => [from, to]);
  const mean = (axis: 'x' | 'y') => ends.reduce((sum, end) => sum + end[axis], 0) / ends.length;
  return [mean('x'), mean('y')];
}

describe.each(LONG ? [2, 12, 20] : [2, 12])('marks of %d sizes', (count) => {
  const { sizes, pieces } = drawn(count, 'shared-pencil');

  it('stand apart by more than the lines that draw them are wide', () => {
    for (const piece of pieces) {
      const marks = piece.sizes.flatMap((shapes, size) =>
        shapes
          .filter((shape) => isPath('notch')(shape) || isPath('drill-hole')(shape))
          .map((shape) => {
            const { width = 0, color = '' } = shape.stroke ?? {};
            return { size, width, color, at: middle(shape) };
          }),
      );
      for (const [i, a] of marks.entries())
        for (const b of marks.slice(i + 1)) {
          if (a.size === b.size) continue;
          const apart = Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);
          // What is in one place is in ink, and each of its sizes is named.
          if (apart < 0.1) expect([a.color, b.color]).toEqual([INK, INK]);
          else if (apart < Math.max(a.width, b.width))
            expect.fail(`marks of ${sizes[a.size]} and ${sizes[b.size]} lie ${apart} mm apart`);
        }
    }
  });

  it('are led to a label of their size, which stands within 2 mm of the end of its leader', () => {
    for (const piece of pieces)
      piece.sizes.forEach((shapes, size) => {
        const labels = shapes.filter(isText);
        expect(new Set(labels.map(({ words }) => words))).toEqual(new Set([sizes[size]]));
        for (const leader of shapes.filter(isPath('mark-leader'))) {
          const end = leader.segments.at(-1)?.to ?? { x: NaN, y: NaN };
          const near = labels.map(({ at }) => Math.hypot(at.x - end.x, at.y - end.y));
          expect(Math.min(...near)).toBeLessThan(2);
        }
      });
  });

  it('on one level have one leader, which names all of their sizes', () => {
    for (const { name, sizes: own, common } of pieces) {
      const words = common.filter(isText);
      for (const { segments } of common.filter(isPath('mark-leader'))) {
        const [first, last] = [segments[0]?.from, segments.at(-1)?.to];
        if (first === undefined || last === undefined) throw new Error('a leader of no length');
        // The names of a scale are led to from its last row, with no sizes of their own.
        if (segments.length < 2) continue;
        const near = words.filter(({ at }) => Math.hypot(at.x - last.x, at.y - last.y) < 2);
        expect(near.map((label) => label.words).join()).toMatch(/^\d+(-|, )\d+$/u);
        const [from = NaN, to = NaN] = (near[0]?.words ?? '').split(/-|, /u).map(Number);
        own.forEach((shapes, size) => {
          const levels = shapes
            .filter(isPath('notch'))
            .filter((notch) => Math.abs(middle(notch)[0] - first.x) < 60)
            .map((notch) => middle(notch)[1]);
          const hasPair = levels.some((a) =>
            levels.some((b) => Math.abs((a + b) / 2 - first.y) < 0.1),
          );
          const label = Number(sizes[size]);
          if (name.includes('back') && label >= from && label <= to) expect(hasPair).toBe(true);
        });
      }
    }
    const back = pieces.find(({ name }) => name === 'back');
    const told = (back?.common ?? []).filter(isText).map((label) => label.words);
    // Zips of 7 in and of 8 in.
    if (count > 2)
      expect(told.filter((label) => /^\d+-\d+$/u.test(label)).length).toBeGreaterThan(1);
  });

  it('of the band have a scale with a row for each size, labeled at both ends', () => {
    const band = pieces.find(({ name }) => name === 'waistband');
    const rows = (band?.sizes ?? []).map((shapes) => shapes.filter(isPath('scale')));
    if (count === 2) return;
    expect(rows.map((own) => own.length)).toEqual(sizes.map(() => 1));
    const levels = rows.flatMap((own) => own.map((row) => middle(row)[1]));
    // Rows of 3.2 mm type are 3.84 mm apart.
    for (const [i, level] of levels.slice(1).entries())
      expect(level - (levels[i] ?? NaN)).toBeCloseTo(3.84, 6);
    (band?.sizes ?? []).forEach((shapes, size) => {
      const small = shapes.filter(isText).filter((words) => words.size < 4);
      expect(small.map(({ words }) => words)).toEqual([sizes[size], sizes[size]]);
      // Right and left of center front, side and each dart; center front; both ends. Backs are double.
      const strokes = shapes.filter(isPath('notch'));
      expect(strokes.length).toBeGreaterThanOrEqual(13);
      for (const stroke of strokes) expect(middle(stroke)[1]).toBeCloseTo(levels[size] ?? NaN, 9);
    });
  });

  it('have no number on a line along which the piece is cut apart', () => {
    for (const { sizes: own, common } of pieces) {
      const levels = common
        .filter((shape) => isPath('length-line')(shape) || isPath('hip-depth-line')(shape))
        .map((line) => middle(line)[1]);
      for (const shape of own.flat().filter(isText))
        for (const level of levels)
          expect(level > shape.at.y + 0.5 || level < shape.at.y - 0.7 * shape.size - 0.5).toBe(
            true,
          );
    }
  });

  it('that all sizes share are drawn once', () => {
    const front = pieces.find(({ name }) => name === 'front');
    expect(front?.common.filter(isPath('notch')).length).toBeGreaterThan(0);
    const band = pieces.find(({ name }) => name === 'waistband');
    expect(band?.common.filter(isPath('fold-line'))).toHaveLength(1);
    for (const shapes of band?.sizes ?? []) expect(shapes.filter(isPath('fold-line'))).toEqual([]);
  });
});

describe('leaders of drill holes', () => {
  it('cross a double line straight, so that they meet again where the paper is moved there', () => {
    const back = drawn(20, 'shared-drop', {
      waist: 23,
      depth: 7.75,
      step: 1.25,
      base: '22',
    }).pieces.find(({ name }) => name === 'back');
    const lines = (back?.common ?? []).filter(isPath('hip-depth-line'));
    const [upper = NaN, lower = NaN] = lines
      .map((line) => middle(line)[1])
      .toSorted((a, b) => a - b);
    const crossing = (back?.sizes ?? [])
      .flatMap((shapes) => shapes.filter(isPath('mark-leader')))
      .flatMap(({ segments }) => segments)
      .filter(({ from, to }) => from.y > 100 && from.y < lower && to.y > upper);
    expect(crossing).toHaveLength(2 * 20);
    for (const { from, to } of crossing) {
      expect(from.x).toBeCloseTo(to.x, 9);
      expect(from.y).toBeLessThan(upper);
      expect(to.y).toBeGreaterThan(lower);
    }
  });
});

describe('labels in a row', () => {
  it('stand where they belong if there is room', () => {
    const labels = [0, 10, 25].map((at) => ({ at, half: 2, weight: 1 }));
    expect(spreadLabels(labels)).toEqual([0, 10, 25]);
  });

  it('spread evenly about their middle if there is none', () => {
    // Three labels of 4 mm at 9, 10 and 11 mm: 6, 10 and 14.
    const labels = [9, 10, 11].map((at) => ({ at, half: 2, weight: 1 }));
    [6, 10, 14].forEach((at, i) => expect(spreadLabels(labels)[i]).toBeCloseTo(at, 9));
  });
});
