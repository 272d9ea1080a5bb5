import { PDFDocument } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { boxHolds, grownBox } from '../../src/geometry/bounds';
import { drawingOf } from '../../src/files/drawing-files';
import { printFiles } from '../../src/files/print-files';
import { printTables } from '../../src/files/print-tables';
import { printedDrawing } from '../../src/print/printed-drawing';
import { readPaper } from '../../src/print/paper';
import { readPrintOptions } from '../../src/print/print-options';
import type { Shape } from '../../src/render/scene';
import { shapeBox } from '../../src/render/shape-box';
import { LONG, some } from '../samples';
import { demo, layersRead, wholeDemo } from './printing';

const MM = 25.4 / 72;
const result = demo({ sizes: ['8', '12', '16'] });
const PAPERS = ['a4', 'letter', 'a3', 'a0', 'roll=36in', 'projector'];

describe('printed files', async () => {
  const files = await printFiles(result, { paper: PAPERS, booklet: 'none' });
  const documents = await Promise.all(
    files.map(({ bytes }) => PDFDocument.load(bytes, { updateMetadata: false })),
  );

  it('are named by their paper', () => {
    expect(files.map(({ name }) => name)).toEqual([
      'print-a4.pdf',
      'print-letter.pdf',
      'print-a3.pdf',
      'print-a0.pdf',
      'print-roll.pdf',
      'projector.pdf',
    ]);
  });

  it('have the same bytes every time, and no date', async () => {
    // In passing one that is laid on tiles and one that is not.
    const papers = LONG ? PAPERS : ['letter', 'projector'];
    const again = await printFiles(result, { paper: papers, booklet: 'none' });
    expect(again).toHaveLength(papers.length);
    for (const { name, bytes } of again) {
      const first = files.find((file) => file.name === name)?.bytes ?? new Uint8Array();
      expect(Buffer.compare(bytes, first)).toBe(0);
    }
    for (const document of documents) expect(document.getCreationDate()).toBeUndefined();
  });

  it.each([
    [0, 210, 297],
    [1, 215.9, 279.4],
    [2, 297, 420],
    [3, 841, 1189],
  ])('file %i has pages of %f x %f mm, upright or lying', (i, width, height) => {
    const pages = documents[i]?.getPages() ?? [];
    expect(pages.length).toBeGreaterThan(0);
    for (const page of pages) {
      const size = [page.getWidth() * MM, page.getHeight() * MM].sort((a, b) => a - b);
      expect(size[0]).toBeCloseTo(width, 3);
      expect(size[1]).toBeCloseTo(height, 3);
    }
  });

  it('have one page for a roll and for a projector', () => {
    expect(documents[4]?.getPageCount()).toBe(1);
    expect((documents[4]?.getPage(0).getWidth() ?? 0) * MM).toBeCloseTo(914.4, 3);
    expect(documents[5]?.getPageCount()).toBe(1);
  });

  it('have a layer a size, all on, and common layers that stay on', () => {
    for (const [i, document] of documents.entries()) {
      const { names, locked, off } = layersRead(document);
      expect(names.slice(0, 3)).toEqual(['Size 8', 'Size 12', 'Size 16']);
      expect(off).toEqual([]);
      const common = names.slice(3).filter((name) => name !== 'Edge scale');
      expect(locked).toEqual(common);
      expect(names.includes('Edge scale')).toBe(i === 5);
    }
  });

  it('say how many sheets they have', () => {
    expect(files[0]?.summary).toMatch(/^\d+ sheets after 5 of instructions and tables; a plain/);
    expect(files[5]?.summary).toMatch(/^one sheet of \d+ x \d+ mm$/);
  });
});

describe('pages of sheets', () => {
  it.each(
    some([
      ['a4', 'overlap', '10mm'],
      ['a4', 'butt', '5mm'],
      ['letter', 'overlap', '3/8in'],
      ['letter', 'butt', '20mm'],
      ['tabloid', 'overlap', '10mm'],
      ['a0', 'butt', '10mm'],
    ] as const),
  )('on %s with %s keep all ink inside the margin of %s', (name, join, margin) => {
    const options = readPrintOptions({ paper: [name], join, margin });
    const { pages } = printedDrawing(
      drawingOf(result),
      printTables(result),
      readPaper(name),
      options,
    );
    for (const { scene, windows } of pages) {
      const { width, height } = scene;
      const room = grownBox({ left: 0, top: 0, right: width, bottom: height }, -options.margin);
      // Half a line of a table may lie on the margin, as a test square's does.
      const reach = grownBox(room, 0.25);
      for (const shape of scene.shapes) expect(boxHolds(reach, shapeBox(shape))).toBe(true);
      for (const { part, at } of windows) {
        const shown = {
          left: at.x,
          top: at.y,
          right: at.x + part.right - part.left,
          bottom: at.y + part.bottom - part.top,
        };
        expect(boxHolds(reach, shown)).toBe(true);
      }
    }
  });

  const summary = (name: string, printed = demo()): readonly number[] => {
    const told = printedDrawing(
      drawingOf(printed),
      printTables(printed),
      readPaper(name),
      readPrintOptions({ paper: [name] }),
    ).summary;
    return /^(\d+) sheets.* takes (\d+)/.exec(told)?.slice(1).map(Number) ?? [];
  };

  it('with cut lines alone have each size in a layer, and no sewing line', () => {
    const { pages, layers } = printedDrawing(
      { ...drawingOf(result), lines: 'cut' },
      [],
      readPaper('a3'),
      readPrintOptions({ paper: ['a3'] }),
    );
    expect(layers.filter(({ locked }) => !locked).map(({ name }) => name)).toEqual([
      'Size 8',
      'Size 12',
      'Size 16',
    ]);
    const [plane] = pages.flatMap(({ windows }) => windows.map(({ drawing }) => drawing));
    const partsOf = (shape: Shape): readonly string[] =>
      shape.kind === 'group'
        ? shape.children.flatMap(partsOf)
        : 'part' in shape
          ? [shape.part]
          : [];
    for (const group of plane ?? []) {
      const parts = new Set(partsOf(group));
      const isSize = group.kind === 'group' && group.layer?.startsWith('Size ') === true;
      expect(parts.has('outline')).toBe(false);
      expect(parts.has('cut-line')).toBe(isSize);
    }
    expect(plane).toHaveLength(4);
  });

  // By hand: pieces of 799 to 821 mm stand two over two on two sheets of 810.5 mm, the ends of one in
  // the free corners of the other, and the band of 1,194 mm upright beside them, the words over it.
  it('are two of A0 for front, back, two linings and band of twelve sizes', () => {
    expect(summary('a0', wholeDemo({ set: { vent_length: '0 cm' } }))).toEqual([2, 4]);
  });

  it('take fewer sheets than a plain grid', () => {
    for (const name of some(['a4', 'letter', 'a4-letter', 'a3'])) {
      const [sheets = NaN, plain = NaN] = summary(name);
      expect(sheets).toBeLessThan(0.95 * plain);
    }
  });
});

describe('refusals', () => {
  const chart = (title: string, labels: readonly string[]): string =>
    `# title: ${title}\n# unit: in\nmeasurement,${labels.join()}\nwaist_girth,25,26,27\nhip_girth,35,36,37\n`;
  const print = (title: string, labels: readonly string[], paper = 'a4') =>
    printFiles(demo({ chart: chart(title, labels), base: labels[1] ?? '', style: 'pencil' }), {
      paper: [paper],
    });

  it.each([
    ['a letter of a script that the font lacks', 'スカート', 'U+30B9'],
    ['a script that runs from right to left', 'חצאית', 'U+05D7'],
    ['an accent that no letter carries', 'q\u0301', 'U+0301'],
    ['a picture', 'Skirt \u{1F457}', 'U+1F457'],
  ])('tell %s', async (_, title, code) => {
    await expect(print(title, ['1', '2', '3'])).rejects.toMatchObject({
      code: 'character-unprintable',
      message: expect.stringContaining(code) as string,
    });
    await expect(print('Skirt', ['S', '中', 'L'])).rejects.toMatchObject({
      code: 'character-unprintable',
      message: expect.stringContaining('U+4E2D') as string,
    });
  });

  it('print what Latin, Greek and Cyrillic names need', async () => {
    const title = 'Jupe « Éloïse » – Größe, Spódnica Łucja, Žluť, Φούστα, Юбка № 5';
    const [file] = await print(title, ['S', 'M½', 'Б']);
    const document = await PDFDocument.load(file?.bytes ?? '', { updateMetadata: false });
    expect(document.getTitle()).toBe(title);
    expect(layersRead(document)).toMatchObject({
      names: ['Size S', 'Size M½', 'Size Б', 'All sizes: names, grain, folds', 'Sheet marks'],
    });
  });

  it('say that a roll is too narrow', async () => {
    await expect(print('Skirt', ['1', '2', '3'], 'roll=200mm')).rejects.toMatchObject({
      code: 'paper-too-small',
      place: { field: 'paper' },
    });
  });
});
