/** Words on the pieces of many sizes: each finds room, and none lies under the lines of others. */
import { describe, expect, it } from 'vitest';
import { drawnSizes } from '../../src/print/plane';
import type { PathShape, Shape, TextShape } from '../../src/render/scene';
import { shapeBox } from '../../src/render/shape-box';
import { drawnPieces } from '../../src/render/sheet-layout';
import { chartText, growing } from '../skirts';
import { gradeLazily } from '../graded';

function said(shapes: readonly Shape[]): string {
  const words = (shape: Shape): string =>
    shape.kind === 'group'
      ? shape.children.map(words).join(' ')
      : shape.kind === 'text'
        ? shape.words
        : '';
  return shapes.map(words).join(' ');
}

function piecesOf(count: number, pairs: boolean) {
  const sizes = Array.from({ length: count }, (_, i) => `${30 + 2 * i}`);
  // Invented: 4 cm a size; in pairs of neighbors all lengths are the same.
  const chart = chartText(
    'cm',
    {
      waist_girth: growing(sizes, 58, 4),
      hip_girth: growing(sizes, 84, 4),
      waist_to_hip: sizes.map((_, i) => 19.5 + 0.4 * (pairs ? Math.floor(i / 2) : i / 2)),
      skirt_length: sizes.map((_, i) => 58 + 0.5 * (pairs ? Math.floor(i / 2) : i / 2)),
    },
    sizes,
  );
  const { title, display, range } = gradeLazily({ chart, base: '44', style: 'shared-pencil' });
  const drawing = {
    ...{ title, display, stackPoint: '', baseSize: '44' },
    sizes: range.sizes.map(({ label, pieces, cutPieces }) => ({ label, pieces, cutPieces })),
  };
  const { plans } = range;
  return { plans, drawn: drawnPieces(drawing, drawnSizes(drawing), { words: '', size: 9 }) };
}

describe('the words on pieces', () => {
  it('tell the line for the hip depth on each piece of twenty sizes that has one', () => {
    const { plans, drawn } = piecesOf(20, false);
    const lined = plans.filter(({ marks }) => marks.some(({ name }) => name === 'hip-depth-line'));
    expect(lined.length).toBeGreaterThan(3);
    for (const { name } of lined) {
      const piece = drawn.find((one) => one.name === name);
      expect(said(piece?.common ?? [])).toContain('HIP DEPTH HERE');
    }
  });

  it('of lines that lie near each other are not crossed by the leaders of size numbers', () => {
    const { drawn } = piecesOf(14, true);
    const found = drawn.flatMap(({ common, sizes }) => {
      const near = common.filter(
        (shape): shape is TextShape => shape.kind === 'text' && shape.words.includes(' within '),
      );
      const leaders = sizes
        .flat()
        .filter((shape): shape is PathShape => shape.kind === 'path' && shape.part === 'leader');
      return near.map((text) => ({ text, leaders }));
    });
    expect(found.length).toBeGreaterThan(10);
    for (const { text, leaders } of found) {
      const { left, right, top, bottom } = shapeBox(text);
      const crossing = leaders.filter(({ segments }) =>
        segments.some(({ from, to }) => {
          const x = (from.x + to.x) / 2;
          const [upper, lower] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
          const isUpright = Math.abs(from.x - to.x) < 1;
          return isUpright && x > left && x < right && upper < bottom && lower > top;
        }),
      );
      expect(crossing).toEqual([]);
    }
  });
});
