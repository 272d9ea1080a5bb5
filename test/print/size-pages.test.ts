/** Which pages a size needs: told in the first square, and true of what the sheets print. */
import { describe, expect, it } from 'vitest';
import { bookletOf } from '../../src/files/booklet-content';
import { drawingOf } from '../../src/files/drawing-files';
import { boxHolds } from '../../src/geometry/bounds';
import type { Box } from '../../src/geometry/bounds';
import { add, point } from '../../src/geometry/point';
import { hasInk, inkOf } from '../../src/print/ink';
import { readPaper } from '../../src/print/paper';
import { readPrintOptions } from '../../src/print/print-options';
import { printedDrawing } from '../../src/print/printed-drawing';
import type { Shape, TextShape } from '../../src/render/scene';
import { shapeBox } from '../../src/render/shape-box';
import { chartText, growing } from '../skirts';
import { demo } from './printing';

const SIZES = Array.from({ length: 12 }, (_, i) => `${32 + 4 * i}`);
/** Invented, and as wide as charts come, so that the smallest needs fewer sheets than the largest. */
const CHART = chartText(
  'cm',
  {
    waist_girth: growing(SIZES, 60, 8),
    hip_girth: growing(SIZES, 86, 8),
    waist_to_hip: growing(SIZES, 20, 0.1),
  },
  SIZES,
);

function words(shapes: readonly Shape[], by = point(0, 0)): readonly TextShape[] {
  return shapes.flatMap((shape): readonly TextShape[] => {
    if (shape.kind === 'group') return words(shape.children, add(by, shape.offset ?? point(0, 0)));
    return shape.kind === 'text' ? [{ ...shape, at: add(shape.at, by) }] : [];
  });
}

/** Every number of `4-6, 9`. */
function numbers(pages: string): readonly number[] {
  return pages.split(', ').flatMap((run) => {
    const [from = NaN, to = from] = run.split('-').map(Number);
    return Array.from({ length: to - from + 1 }, (_, i) => from + i);
  });
}

/** What is on the strip that is glued under stands on the next sheet too. */
function withoutStrip(part: Box): Box {
  return { ...part, right: part.right - 10, bottom: part.bottom - 4 };
}

describe('the pages for one size', () => {
  const result = demo({ chart: CHART, base: '52' });
  const { pages } = printedDrawing(
    drawingOf(result),
    [],
    readPaper('a4'),
    readPrintOptions({ paper: ['a4'] }),
    bookletOf(result, [], []),
  );
  const first = pages.findIndex(({ windows }) => windows.length > 0);
  const front = words(pages[first - 1]?.scene.shapes ?? []);
  const text = front.map((line) => line.words).join(' ');
  const told = [
    ...text.matchAll(/Sizes? (\d+)(?: to (\d+))?: pages (\d+(?:-\d+)?(?:, \d+(?:-\d+)?)*)/gu),
  ];

  it('are told for every size, inside the first square', () => {
    expect(text).toContain('1. Print');
    const sizes = told.flatMap(([, from, to = from]) =>
      SIZES.slice(SIZES.indexOf(from ?? ''), SIZES.indexOf(to ?? '') + 1),
    );
    expect(sizes).toEqual(SIZES);
    const square = { left: 10, top: 30, right: 110, bottom: 130 };
    for (const line of front.filter((one) => /pages|Pages/u.test(one.words)))
      expect(boxHolds(square, shapeBox(line))).toBe(true);
  });

  it('are all that have anything of it', () => {
    for (const [, from = '', , listed = ''] of told) {
      const own = new Set(numbers(listed));
      expect(Math.max(...own)).toBeLessThanOrEqual(pages.length);
      pages.forEach(({ windows }, i) => {
        if (i < first) return;
        const isShown = windows.some(({ drawing, part }) =>
          drawing.some(
            (group) =>
              group.kind === 'group' &&
              (group.layer === `Size ${from}` || group.layer?.startsWith('All sizes') === true) &&
              hasInk(inkOf([group]), withoutStrip(part)),
          ),
        );
        if (isShown) expect([from, i + 1, own.has(i + 1)]).toEqual([from, i + 1, true]);
      });
      // Else the list would say nothing that a sewer does not know.
      if (from === SIZES[0]) expect(own.size).toBeLessThan(pages.length - first);
    }
  });
});
