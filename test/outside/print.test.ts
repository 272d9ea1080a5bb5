/** Printed files as programs from outside read them. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { printFiles } from '../../src/files/print-files';
import { demo, showing, wholeDemo } from '../print/printing';
import type { Raster } from './raster';
import { darkMiddles, lightness } from './raster';
import { colorPage, describeOutside, folder, grayPages, run } from './tools';

const DPI = 300;
const MM = 25.4 / DPI;

describeOutside('printed files read from outside', async () => {
  const place = folder();
  const result = wholeDemo({ sizes: ['2', '12', '24'] });
  const papers = ['a4', 'letter', 'a4-letter', 'a3', 'a0', 'roll=36in', 'projector'];
  const files = await printFiles(result, { paper: papers, booklet: 'none' });
  const paths = new Map(
    files.map(({ name, bytes }) => {
      const path = join(place, name);
      writeFileSync(path, bytes);
      return [name, path];
    }),
  );
  const pathOf = (name: string): string => paths.get(name) ?? '';
  const pagesIn = (path: string): number =>
    Number(/^Pages: +(\d+)/m.exec(run('pdfinfo', path))?.[1]);

  it.each(files.map(({ name }) => name))('%s has no fault that qpdf finds', (name) => {
    expect(run('qpdf', '--check', pathOf(name))).toContain('No syntax or stream encoding errors');
  });

  it('the cover and the properties tell what the chart states of the design', async () => {
    const chart =
      'Юбка осенняя\n# designer: Ann Lind\n# version: 2\n# date: 2026-03-01\n# copyright: 2026\n' +
      '# unit: in\nmeasurement,8,10,12\nwaist_girth,25,26,27\nhip_girth,35,36,37\n';
    const own = await printFiles(demo({ chart, base: '10', style: 'pencil' }), {
      paper: ['a4', 'a0'],
    });
    for (const { name, bytes } of own) {
      const path = join(place, `own-${name}`);
      writeFileSync(path, bytes);
      const info = run('pdfinfo', '-isodates', path);
      expect(info).toMatch(/^Title: +Юбка осенняя$/m);
      expect(info).toMatch(/^Author: +Ann Lind$/m);
      expect(info).toMatch(/^CreationDate: +2026-03-01T/m);
      const words = run('pdftotext', '-f', '1', '-l', '1', path, '-').replace(/\s+/g, ' ');
      expect(words).toContain('Юбка осенняя');
      expect(words).toContain('Design: Ann Lind · Version 2 · 2026-03-01 · © 2026 Ann Lind');
    }
  });

  it.each(files.map(({ name }) => name))('%s has all its fonts, in part', (name) => {
    const fonts = run('pdffonts', pathOf(name)).trim().split('\n').slice(2);
    expect(fonts.length).toBeGreaterThan(0);
    // A tag before the name, then: embedded, in part, with the characters that its numbers stand for.
    for (const font of fonts)
      expect(font).toMatch(/^[A-Z]{6}\+Arimo-(Regular|Bold) .* Identity-H +yes yes yes /);
  });

  it.each([
    ['print-a4.pdf', 210, 297],
    ['print-letter.pdf', 215.9, 279.4],
    ['print-a4-letter.pdf', 210, 279.4],
    ['print-a3.pdf', 297, 420],
    ['print-a0.pdf', 841, 1189],
  ])('every page of %s is %f x %f mm to 0.1 mm', (name, width, height) => {
    const count = pagesIn(pathOf(name));
    const told = run('pdfinfo', '-f', '1', '-l', `${count}`, pathOf(name));
    const sizes = [...told.matchAll(/^Page +\d+ size: +([\d.]+) x ([\d.]+) pts/gm)];
    expect(sizes).toHaveLength(count);
    for (const [, x, y] of sizes) {
      const sides = [Number(x), Number(y)].map((pt) => (pt * 25.4) / 72).sort((a, b) => a - b);
      expect(Math.abs((sides[0] ?? NaN) - width)).toBeLessThan(0.1);
      expect(Math.abs((sides[1] ?? NaN) - height)).toBeLessThan(0.1);
    }
  });

  it.each(['print-a4.pdf', 'print-letter.pdf', 'print-a4-letter.pdf'])(
    'the test squares on the first page of %s measure 100 mm and 4 in to 0.2 mm',
    (name) => {
      const [page] = grayPages(pathOf(name), DPI, { last: 1 });
      expectSquares(page, 0, 0);
    },
  );

  it.each([
    ['A4', 210, 297],
    ['letter', 215.9, 279.4],
  ] as const)('the file for A4 and Letter stands whole on %s, its squares true', (paper, w, h) => {
    const path = pathOf('print-a4-letter.pdf');
    const onPaper = `${path}-${paper}.pdf`;
    // As a printer does at 100 %: neither shrunk nor grown, in the middle of the paper.
    run('pdftocairo', '-pdf', '-paper', paper, '-noshrink', '-l', '6', path, onPaper);
    const pages = grayPages(onPaper, DPI);
    expect(pages).toHaveLength(6);
    expectSquares(pages[0], (w - 210) / 2, (h - 279.4) / 2);
    for (const page of pages) {
      expect(Math.abs(Math.min(page.width, page.height) * MM - Math.min(w, h))).toBeLessThan(0.2);
      const edge = Math.floor(9.6 / MM);
      for (let y = 0; y < page.height; y += 3) {
        for (
          let x = 0;
          x < page.width;
          x += y > edge && y < page.height - edge ? page.width - 1 : 3
        )
          expect(lightness(page, x, y)).toBe(255);
      }
    }
  });

  it('the ruler of every sheet is 4 in long to 0.2 mm and stands inside the margin', () => {
    // A few rows of dots about the ruler's line, 3 mm above the margin of a lying or upright sheet.
    const path = pathOf('print-a4.pdf');
    const { summary = '' } = files.find(({ name }) => name === 'print-a4.pdf') ?? {};
    const first = 1 + Number(/after (\d+) of/u.exec(summary)?.[1]);
    const told = run('pdfinfo', '-f', `${first}`, '-l', `${pagesIn(path)}`, path);
    const heights = [...told.matchAll(/^Page +\d+ size: .* x ([\d.]+) pts/gm)].map(([, pt]) =>
      Math.round((Number(pt) * 25.4) / 72),
    );
    expect(heights.length).toBe(pagesIn(path) - first + 1);
    for (const height of new Set(heights)) {
      const top = Math.round((height - 13) / MM) - 2;
      grayPages(path, DPI, { first, top, rows: 5 }).forEach((raster, i) => {
        if (heights[i] !== height) return;
        let longest = 0;
        for (let y = 0; y < raster.height; y++) {
          for (let x = 0, length = 0; x < raster.width; x++) {
            length = lightness(raster, x, y) < 200 ? length + 1 : 0;
            longest = Math.max(longest, length * MM);
          }
        }
        // From middle to middle of the ticks at its ends, which are 0.3 mm wide.
        expect(Math.abs(longest - 0.3 - 101.6)).toBeLessThan(0.2);
      });
    }
  });

  it.each(['print-a4.pdf', 'print-letter.pdf', 'print-a4-letter.pdf'])(
    '%s leaves its margins white',
    (name) => {
      const dpi = 60;
      // The margin is 10 mm; a dot that ink touches at all is not white.
      const edge = Math.floor((9.6 * dpi) / 25.4);
      const pages = grayPages(pathOf(name), dpi);
      expect(pages).toHaveLength(pagesIn(pathOf(name)));
      for (const { width, height, samples } of pages) {
        const isMargin = (i: number): boolean => {
          const [x, y] = [i % width, Math.floor(i / width)];
          return x < edge || y < edge || x >= width - edge || y >= height - edge;
        };
        expect(samples.every((light, i) => light === 255 || !isMargin(i))).toBe(true);
        expect(samples.some((light) => light < 255)).toBe(true);
      }
    },
  );

  it('words are found as text, each common word once on the whole sheet', () => {
    const first = run('pdftotext', '-f', '1', '-l', '1', '-layout', pathOf('print-a4.pdf'), '-');
    expect(first).toContain('Quill skirt');
    expect(first).toContain('Sew a toile');
    expect(first).toMatch(/100 mm/);
    const roll = run('pdftotext', pathOf('print-roll.pdf'), '-');
    expect(roll.match(/^FRONT$/gm)).toHaveLength(1);
    expect(roll.match(/^RIGHT BACK LINING$/gm)).toHaveLength(1);
    expect(roll.match(/^Cautions$/gm)).toHaveLength(1);
  });

  it('a reader shows the sizes that are switched on, and no other', async () => {
    const { bytes = new Uint8Array() } = files.find(({ name }) => name === 'projector.pdf') ?? {};
    const shown = async (...layers: readonly string[]) => {
      const path = join(place, `${layers.length}-${layers[0] ?? 'none'}.pdf`);
      writeFileSync(path, await showing(bytes, layers));
      const { samples, width, height } = colorPage(path, 40);
      // Dots by the color they show: the three sizes are drawn in blue, ink and green.
      const counts = { blue: 0, green: 0, ink: 0 };
      for (let i = 0; i < width * height; i++) {
        const [r = 0, g = 0, b = 0] = samples.subarray(3 * i, 3 * i + 3);
        if (b > r + 60 && b > g + 40) counts.blue++;
        else if (g > r + 60 && g > b) counts.green++;
        else if (r < 90 && g < 90 && b < 90) counts.ink++;
      }
      return counts;
    };
    const none = await shown();
    expect(none).toEqual({ blue: 0, green: 0, ink: 0 });
    const smallest = await shown('Size 2');
    const base = await shown('Size 12');
    const all = await shown('Size 2', 'Size 12', 'Size 24');
    expect(smallest.blue).toBeGreaterThan(500);
    expect(smallest.green).toBe(0);
    // Marks that some sizes share are in ink.
    expect(smallest.ink).toBeLessThan(0.01 * smallest.blue);
    expect(base.ink).toBeGreaterThan(500);
    expect(base).toMatchObject({ blue: 0, green: 0 });
    for (const count of Object.values(all)) expect(count).toBeGreaterThan(500);
  });
});

/**
 * Rows and columns through the squares beside their words: the squares stand on the left, 20 mm below
 * the margin and 6 mm apart, on a page whose corner is at (`left`, `above`) mm.
 */
function expectSquares(page: Raster | undefined, left: number, above: number): void {
  if (page === undefined) throw new Error('a page');
  for (const [top, side] of [
    [above + 30, 100],
    [above + 136, 101.6],
  ] as const) {
    const row = darkMiddles(page, 'row', Math.round((top + side - 12) / MM));
    const inRow = row.filter((x) => x < (left + 114) / MM);
    const across = ((inRow.at(-1) ?? NaN) - (inRow[0] ?? NaN)) * MM;
    expect(Math.abs(across - side)).toBeLessThan(0.2);
    const column = darkMiddles(page, 'column', Math.round((left + 10 + side - 3) / MM));
    const inColumn = column.filter((y) => y > (top - 2) / MM && y < (top + side + 2) / MM);
    const down = ((inColumn.at(-1) ?? NaN) - (inColumn[0] ?? NaN)) * MM;
    expect(Math.abs(down - side)).toBeLessThan(0.2);
  }
}
