/** The key of the sizes: what tells their lines apart can be seen in it. */
import { describe, expect, it } from 'vitest';
import { drawingOf } from '../../src/files/drawing-files';
import { printedDrawing } from '../../src/print/printed-drawing';
import { readPaper } from '../../src/print/paper';
import { readPrintOptions } from '../../src/print/print-options';
import type { PathShape, Shape, TextShape } from '../../src/render/scene';
import { drawingOf as drawn, even } from '../render/fixture';
import { LONG } from '../samples';
import { wholeDemo } from './printing';

type Leaf = Exclude<Shape, { kind: 'group' }>;

const made = new Map<string, readonly Leaf[]>();

/** All shapes of one paper, made once for all that is asked of it. */
function shapesOf(count: number, paper: string): readonly Leaf[] {
  const key = `${count} ${paper}`;
  const shapes = made.get(key) ?? printedShapes(count, paper);
  made.set(key, shapes);
  return shapes;
}

function printedShapes(count: number, paper: string): readonly Leaf[] {
  const leaves = (shape: Shape): readonly Leaf[] =>
    shape.kind === 'group' ? shape.children.flatMap(leaves) : [shape];
  const drawing =
    count === 12 ? drawingOf(wholeDemo()) : drawn(even(count, 0.5, (i) => String(2 * i + 2)));
  const { pages } = printedDrawing(
    drawing,
    [],
    readPaper(paper),
    readPrintOptions({ paper: [paper] }),
  );
  return pages.flatMap(({ scene, windows }) =>
    [...scene.shapes, ...windows.slice(0, 1).flatMap((window) => window.drawing)].flatMap(leaves),
  );
}

describe.each(LONG ? [2, 12, 20] : [2, 20])('the key of %i sizes', (count) => {
  it.each(['letter', 'a4', 'a0', 'roll=36in', 'projector'])(
    'shows every dash twice at least: %s',
    (paper) => {
      const samples = shapesOf(count, paper).filter(
        (shape): shape is PathShape => shape.kind === 'path' && shape.part === 'sample',
      );
      expect(samples.length).toBeGreaterThanOrEqual(count);
      for (const { segments, stroke } of samples) {
        const [line] = segments;
        const period = (stroke?.dash ?? []).reduce((sum, part) => sum + part, 0);
        const length = (line?.to.x ?? NaN) - (line?.from.x ?? NaN);
        expect(length).toBeGreaterThanOrEqual(2 * period - 1e-9);
      }
    },
  );

  it.each(['letter', 'a0', 'projector'])('names all sizes as large: %s', (paper) => {
    const texts = shapesOf(count, paper).filter(
      (shape): shape is TextShape => shape.kind === 'text',
    );
    const base = texts.find(({ words }) => /^\d+, base$/.test(words));
    const sizes = new Set(texts.filter(({ words }) => words === '2').map(({ size }) => size));
    expect(sizes.has(base?.size ?? NaN)).toBe(true);
  });
});
