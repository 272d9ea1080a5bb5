/** The words of the booklet as Poppler reads them from the PDF, for every style and its options. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { bookletOf } from '../../src/files/booklet-content';
import { printTables } from '../../src/files/print-tables';
import { bookletPages } from '../../src/print/booklet/booklet-pages';
import { sheetNamed } from '../../src/print/paper';
import { pdf } from '../../src/render/pdf';
import { wholeDemo } from '../print/printing';
import { OPTIONED } from '../sewing/garments';
import { describeOutside, folder, run } from './tools';

describeOutside('the words of the booklet', () => {
  const place = folder();

  it.each(OPTIONED)('of %s with %j are those of the garment', async (style, set) => {
    const result = wholeDemo({ style, set });
    const measures = printTables(result);
    const booklet = bookletOf(result, measures, []);
    const pages = bookletPages(booklet, 'full', sheetNamed('letter'), 10);
    const path = join(place, 'booklet.pdf');
    writeFileSync(
      path,
      await pdf(
        booklet.title,
        [],
        pages.map((scene) => ({ scene, windows: [] })),
      ),
    );
    const read = run('pdftotext', '-layout', path, '-').replace(/\s+/gu, ' ');
    const pieces = result.shown[0]?.pieces.map(({ plan }) => plan) ?? [];
    for (const plan of pieces) expect(read).toContain(plan.name.replace(/_/g, ' '));
    const has = (part: string): boolean => pieces.some((plan) => plan.part === part);
    const edge = (seam: string): boolean =>
      pieces.some(({ part, outline }) => part === 'panel' && outline.some((e) => e.seam === seam));
    // What the garment has is told, and what it has not is not.
    const told: readonly (readonly [RegExp, boolean])[] = [
      [/\d\. Waistband/u, has('waistband')],
      [/\d\. Facing/u, has('facing')],
      [/no band and no facing/u, !has('waistband') && !has('facing')],
      [/\d\. Seams of the lining/u, has('lining')],
      [/\d\. Vent/u, edge('vent')],
      [/\d\. Slit/u, edge('slit')],
      [/\d\. Darts/u, true],
      [/\d\. Zip/u, true],
      [/\d\. Hem/u, true],
    ];
    for (const [words, isTold] of told) expect([words, words.test(read)]).toEqual([words, isTold]);
    for (const heading of ['Choose your size', 'Cautions', 'Sew a toile before you cut cloth.'])
      expect(read).toContain(heading);
  });
});
