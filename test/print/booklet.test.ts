/** The booklet before the sheets: its pages, and that each of its numbers is that of the draft. */
import { describe, expect, it } from 'vitest';
import { boxHolds, boxesOverlap, grownBox } from '../../src/geometry/bounds';
import { bookletOf } from '../../src/files/booklet-content';
import { printFiles } from '../../src/files/print-files';
import { printTables } from '../../src/files/print-tables';
import { measureOf } from '../../src/grade/graded-pattern';
import type { GradeResult } from '../../src/index';
import { bookletPages } from '../../src/print/booklet/booklet-pages';
import { sheetNamed } from '../../src/print/paper';
import type { Scene, Shape, TextShape } from '../../src/render/scene';
import { shapeBox } from '../../src/render/shape-box';
import { add, point } from '../../src/geometry/point';
import { demo } from './printing';

const MARGIN = 10;

function pagesOf(
  result: GradeResult,
  choice: 'full' | 'short' | 'none',
  paper = 'a4',
): readonly Scene[] {
  const booklet = bookletOf(result, printTables(result), []);
  return bookletPages(booklet, choice, sheetNamed(paper), MARGIN);
}

/** Every line of words where it stands on its page. */
function words(shapes: readonly Shape[], by = point(0, 0)): readonly TextShape[] {
  return shapes.flatMap((shape): readonly TextShape[] => {
    if (shape.kind === 'group') return words(shape.children, add(by, shape.offset ?? point(0, 0)));
    return shape.kind === 'text' ? [{ ...shape, at: add(shape.at, by) }] : [];
  });
}

function textOf(pages: readonly Scene[]): string {
  return pages.flatMap(({ shapes }) => words(shapes).map((line) => line.words)).join(' ');
}

describe('the booklet', () => {
  const result = demo({ set: { lining: '1' } });

  it.each(['a4', 'letter'])('keeps all ink of its pages on %s inside the margin', (paper) => {
    for (const { width, height, shapes } of pagesOf(result, 'full', paper)) {
      const room = grownBox({ left: 0, top: 0, right: width, bottom: height }, -MARGIN);
      // Half a line of a table may lie on the margin; the line at the foot hangs below it.
      const reach = { ...grownBox(room, 0.3), bottom: room.bottom + 1 };
      const out = shapes.filter((shape) => !boxHolds(reach, shapeBox(shape)));
      expect(out.flatMap((shape) => words([shape]).map((line) => line.words))).toEqual([]);
      expect(out).toEqual([]);
    }
  });

  it('has no words on other words', () => {
    for (const { shapes } of pagesOf(result, 'full')) {
      const boxes = words(shapes).map((line) => grownBox(shapeBox(line), -0.3));
      for (const [i, box] of boxes.entries())
        for (const other of boxes.slice(i + 1)) expect(boxesOverlap(box, other)).toBe(false);
    }
  });

  it('tells how to sew when it is full, not when it is short, and nothing when there is none', () => {
    const full = textOf(pagesOf(result, 'full'));
    const short = textOf(pagesOf(result, 'short'));
    for (const heading of ['Choose your size', 'You need', 'Cut', 'The first toile', 'Cautions']) {
      expect(full).toContain(heading);
      expect(short).toContain(heading);
    }
    expect(full).toContain('1. Interfacing');
    expect(short).not.toContain('1. Interfacing');
    expect(pagesOf(result, 'none')).toEqual([]);
  });

  it('states the ease that the finished garment has over the body', () => {
    const row = (name: string, i: number): number =>
      result.chart.rows.find((one) => one.name === `${name}_girth`)?.values[i] ?? NaN;
    const eases = result.shown.map(
      (size) => measureOf(size, 'hip') - row('hip', result.chart.sizes.indexOf(size.label)),
    );
    const inches = eases.map((mm) => mm / 25.4);
    const said = /wider by .* and ([\d /]+) in/u.exec(textOf(pagesOf(result, 'full')))?.[1] ?? '';
    const [whole = '', over = '0', under = '1'] =
      /^(\d+)? ?(?:(\d+)\/(\d+))?/u.exec(said)?.slice(1) ?? [];
    const told = Number(whole) + Number(over) / Number(under);
    expect(Math.abs(told - (inches[0] ?? NaN))).toBeLessThan(1 / 16);
  });

  it('lists every piece once, with the number that it is printed with', () => {
    const { pieces } = bookletOf(result, [], []);
    const cut = result.shown[0]?.cutPieces ?? [];
    expect(pieces.map(({ number, name }) => [number, name])).toEqual(
      cut.map(({ number, piece }) => [number, piece.plan.name.replace(/_/g, ' ')]),
    );
  });

  it('stands before tiled sheets, and beside large ones in a file of its own', async () => {
    const one = demo({ sizes: ['12'] });
    const files = await printFiles(one, { paper: ['a4', 'a0'] });
    expect(files.map(({ name }) => name)).toEqual(['print-a4.pdf', 'print-a0.pdf', 'booklet.pdf']);
    const tiled = await printFiles(one, { paper: ['a4'] });
    expect(tiled.map(({ name }) => name)).toEqual(['print-a4.pdf']);
    const before = /after (\d+) of/u.exec(tiled[0]?.summary ?? '')?.[1];
    const bare = await printFiles(one, { paper: ['a4'], booklet: 'none' });
    expect(Number(before)).toBeGreaterThan(
      Number(/after (\d+) of/u.exec(bare[0]?.summary ?? '')?.[1]),
    );
  });
});
