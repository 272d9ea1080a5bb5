/** The booklet before the sheets: its pages, and that each of its numbers is that of the draft. */
import { describe, expect, it } from 'vitest';
import { boxHolds, boxesOverlap, grownBox } from '../../src/geometry/bounds';
import { PAIRED_WIDTHS } from '../../src/fabric/cloth';
import { fabricNeeds } from '../../src/fabric/fabric-needs';
import { drawingOf } from '../../src/files/drawing-files';
import { cutSize } from '../../src/files/fabric-files';
import { fabricTables } from '../../src/files/fabric-table';
import { bookletOf } from '../../src/files/booklet-content';
import { printFiles } from '../../src/files/print-files';
import { printTables } from '../../src/files/print-tables';
import { measureOf } from '../../src/grade/graded-pattern';
import type { GradeResult } from '../../src/index';
import { bookletPages } from '../../src/print/booklet/booklet-pages';
import { stepPicture } from '../../src/print/booklet/step-picture';
import { readPaper, sheetNamed } from '../../src/print/paper';
import { printedDrawing } from '../../src/print/printed-drawing';
import { readPrintOptions } from '../../src/print/print-options';
import type { Scene, Shape, TextShape } from '../../src/render/scene';
import { shapeBox } from '../../src/render/shape-box';
import { add, point } from '../../src/geometry/point';
import { graded } from '../given/sheets';
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
      const clashes = boxes.filter((box, i) =>
        boxes.slice(i + 1).some((other) => boxesOverlap(box, other)),
      );
      expect(clashes).toEqual([]);
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

  it.each([
    ['unlined', { lining: '0', waist_finish: '0' }, 'cut the waist and its darts in'],
    ['faced', { waist_finish: '2' }, 'cut the waist, its darts and the facing in'],
    ['lined', { lining: '1' }, 'cut the waist, its darts and the waistband in'],
  ] as const)('speaks of no other parts than a skirt that is %s has', (kind, set, waist) => {
    const told = textOf(pagesOf(demo({ set }), 'full')).replace('no band and no facing', '');
    expect(told).toContain(waist);
    expect(/lining/iu.test(told)).toBe(kind !== 'unlined');
    expect(/\bband\b|waistband/iu.test(told)).toBe(kind === 'lined');
  });

  it.each([
    ['a lining with a vent', {}, true, true],
    ['a band alone', { lining: '0' }, true, false],
    ['no piece of one side', { lining: '0', waist_finish: '0' }, false, false],
  ] as const)('tells which side is up only as its pieces do: %s', (_, set, right, wrong) => {
    const { cutting } = bookletOf(demo({ set }), [], []);
    expect(cutting.some((words) => words.includes('right side up'))).toBe(right);
    expect(cutting.some((words) => words.includes('wrong side up'))).toBe(wrong);
    expect(cutting.some((words) => words.includes('right sides together'))).toBe(right || wrong);
  });

  // By hand: what such a pattern has, and the words for it; what it lacks is not spoken of.
  const square = (name: string, more: string): string =>
    `# unit: cm\n# base: 1\n${more}piece,point,x,y,kind,edge,cut\n` +
    `${name},a,0,0,corner,top,\n${name},b,20,0,corner,side,\n${name},c,20,50,corner,hem,\n` +
    `${name},d,0,50,corner,center,\n`;
  const still =
    '# unit: cm\n# sizes: 1, 2\npiece,point,step_dx,step_dy\ngore,b,0.5,0\ngore,c,0.5,0\ngore,a,0,0\ngore,d,0,0\n';
  const cutOf = (pattern: string): string =>
    bookletOf(graded(pattern, still), [], []).cutting.join(' ');

  it('tells of a given pattern only what it has', () => {
    const bare = cutOf(square('gore', ''));
    expect(bare).toContain('Ask whoever drew it how a piece without a grainline lies');
    expect(bare).toContain(
      'Add a seam allowance to every edge but folds as you cut, unless they have one',
    );
    expect(bare).not.toMatch(/notch|drill|dart|fold on|pair|its grainline|side up/u);
    const six = cutOf(
      `${square('gore', '# allowance: 1 cm\n').replace('top,\n', 'top,6\n')}` +
        'gore,g,10,5,grain,,\ngore,h,10,45,grain,,\ngore,i,10,10,drill,,\n',
    );
    expect(six).toContain('Lay each piece with its grainline along the selvage.');
    expect(six).toContain('is cut in pairs: on folded cloth two at once');
    expect(six).toContain('Mark drill holes with chalk');
    expect(six).not.toMatch(/notch|dart|on the fold|add a seam|without a grainline/iu);
  });

  it('sets its blocks closer where that saves a page', () => {
    const sentence = 'Sew a toile before you cut cloth.';
    const made = (lines: number): readonly Scene[] => {
      const pieces = demo().range.sizes[0]?.pieces ?? [];
      return bookletPages(
        {
          ...{ title: 'Quill', facts: [], garment: undefined, body: undefined, choosing: [] },
          ...{ measures: [], needs: [], pieces: [], steps: [], pictured: { pieces, zipEnd: 0 } },
          ...{ notions: [sentence], cutting: [sentence], cautions: [sentence] },
          toile: Array.from({ length: lines }, () => sentence),
        },
        'full',
        sheetNamed('a4'),
        MARGIN,
      );
    };
    // From the heading of the toile to its first line there are 5 mm, or 3 where they are set closer.
    const above = (lines: number): number => {
      const all = made(lines).flatMap(({ shapes }) => words(shapes));
      const head = all.findIndex((line) => line.words === 'The first toile');
      return (all[head + 1]?.at.y ?? NaN) - (all[head]?.at.y ?? NaN);
    };
    const counts = Array.from({ length: 60 }, (_, i) => made(i + 1).length);
    expect(counts).toEqual(counts.toSorted((a, b) => a - b));
    const most = counts.lastIndexOf(1) + 1;
    expect(most).toBeGreaterThan(10);
    expect(above(1) - above(most)).toBeCloseTo(2, 6);
    expect(above(most + 1)).toBeCloseTo(above(1), 6);
  });

  it('says the zip that is bought and the opening for it in the same words', () => {
    const told = textOf(pagesOf(demo(), 'full'));
    const opening = /notch of the zip end: (.*?)\. Sew from/u.exec(told)?.[1] ?? '';
    const zip = /Set the zip into the opening: (.*?)\. Its stop/u.exec(told)?.[1] ?? '';
    expect(opening).toBe(zip);
    // Zips are sold in whole inches and in even centimeters (common practice, no source).
    expect(zip).toMatch(/^\d in \(\d[02468] cm\)( to \d in \(\d[02468] cm\), by size)?$/u);
    expect(told).not.toContain('zip opening');
  });

  it('has the unit of the chart first, in tables and in words', () => {
    for (const unit of ['in', 'cm'] as const) {
      const one = demo({ unit });
      const cloth = fabricTables(
        fabricNeeds(one.shown.slice(0, 1).map(cutSize), {
          widths: PAIRED_WIDTHS.slice(0, 1),
          naps: ['with'],
        }),
        { unit },
      );
      const { measures, needs } = bookletOf(one, printTables(one), cloth);
      const first = [...measures, ...needs].flatMap(({ rows }) =>
        rows.map(({ lines }) => lines[0]?.unit === 'cm'),
      );
      expect(new Set(first)).toEqual(new Set([unit === 'cm']));
      const captions = words(
        needs.flatMap(({ pictures = [] }) => pictures.flatMap((p) => p.shapes)),
      )
        .map((line) => line.words)
        .join(' ');
      expect(captions).toMatch(
        unit === 'in' ? /[\d/] in \([\d.]+ cm\) short of/u : /[\d.]+ cm \([\d /]+ in\) short of/u,
      );
    }
  });

  it('tells on its cover which page has the squares', () => {
    const one = demo({ sizes: ['12'] });
    const { pages, summary } = printedDrawing(
      drawingOf(one),
      printTables(one),
      readPaper('a4'),
      readPrintOptions({ paper: ['a4'] }),
      bookletOf(one, printTables(one), []),
    );
    const first = Number(/print page (\d+) first/u.exec(summary)?.[1]);
    const [cover] = pages;
    expect(textOf(cover ? [cover.scene] : [])).toContain(`Print page ${first} first, at 100 %`);
    expect(textOf(pages.slice(first - 1, first).map(({ scene }) => scene))).toContain('1. Print');
  });

  it('shows no more than four pieces side by side, each with its number', () => {
    const { steps, pictured } = bookletOf(demo({ set: { waist_finish: '2' } }), [], []);
    for (const step of steps) {
      const names = words(stepPicture(step, pictured)?.shapes ?? []).filter((line) =>
        /^\d/u.test(line.words),
      );
      const shown = new Set([...step.sews.map(({ piece }) => piece), ...(step.beside ?? [])]);
      expect(names).toHaveLength(shown.size);
      for (const { at } of names)
        expect(names.filter((other) => other.at.y === at.y).length).toBeLessThanOrEqual(4);
    }
  });

  it('says that what is cut twice is a pair, which open cloth does not make by itself', () => {
    const told = textOf(pagesOf(result, 'short'));
    expect(told).toMatch(/2 back Cut 2 /u);
    expect(told).toContain('on open cloth once as it is printed and once turned face down');
  });

  it('lists every piece once, with the number that it is printed with', () => {
    const { pieces } = bookletOf(result, [], []);
    const cut = result.shown[0]?.cutPieces ?? [];
    expect(pieces.map(({ number, name }) => [number, name])).toEqual(
      cut.map(({ number, piece }) => [number, piece.plan.name.replace(/_/g, ' ')]),
    );
  });

  it('stands before tiled sheets, and beside large ones in a file of its own', async () => {
    const one = demo({ sizes: ['12'], style: 'pencil' });
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
