/** The pages of a drawing and its tables on one paper. */
import { counted } from '../table/counted';
import type { CalledSize, NestDrawing } from '../render/nest-drawing';
import { compact } from '../render/side-by-side';
import { keyEntries } from '../render/size-style';
import { linesShown } from '../render/nest-drawing';
import { linesNotes, sizeWords, sizesDrawn } from '../render/captions';
import type { PdfPage } from '../render/pdf';
import type { Scene } from '../render/scene';
import type { PdfLayer } from '../render/pdf-layers';
import type { Booklet } from './booklet/booklet';
import { bookletPages } from './booklet/booklet-pages';
import type { CoverTables } from './cover';
import { COVER_WIDTHS, cover } from './cover';
import type { FrontPage } from './front-page';
import { frontPage } from './front-page';
import { inkOf } from './ink';
import { imprintWords } from '../table/imprint';
import type { Paper, SheetPaper } from './paper';
import { sheetNamed } from './paper';
import type { PlanePart } from './plane';
import { ALL_SIZES, drawnSizes, pieceParts, planeShapes } from './plane';
import type { PrintOptions } from './print-options';
import { SCALE_LAYER, projectorPage } from './projector';
import { rollPage } from './roll-page';
import { pagesTold } from './size-pages';
import type { SizeTable } from './size-table';
import { tablePages } from './table-pages';
import type { TiledPlane } from './tile-page';
import { SHEET_MARKS } from './tile-page';
import { tilePages, tiled } from './tiled';
import { turned } from './turned';

/** A file of one paper before it is written. */
export interface Printed {
  readonly title: string;
  readonly pages: readonly PdfPage[];
  readonly layers: readonly PdfLayer[];
  readonly summary: string;
}

/** mm. A sheet at least this wide has room for words beside the pieces. */
const LARGE = 400;
/** Type sizes in mm of the labels of the sizes, in a projector's picture and on paper. */
const LABELS = 7;
const PAPER_LABELS = 4;

/** A sheet so small that the pieces go over several, with pages of words before them. */
export function isTiled(paper: Paper): paper is SheetPaper {
  return paper.kind === 'sheet' && paper.width < LARGE;
}

/** The pages of one paper; a booklet goes before tiled sheets and takes the tables with it. */
export function printedDrawing(
  drawing: NestDrawing,
  tables: readonly SizeTable[],
  paper: Paper,
  options: PrintOptions,
  booklet?: Booklet,
): Printed {
  const { title, imprint = {}, display } = drawing;
  const head = { title, shown: sizesDrawn(drawing), imprint: imprintWords(imprint) };
  const sizes = drawnSizes(drawing);
  const key = keyEntries(sizes, linesShown(drawing) === 'both');
  const lines = { note: linesNotes(drawing, sizes.length).join(' '), key };
  const pieces = pieceParts(
    { ...drawing, labelType: paper.kind === 'projector' ? LABELS : PAPER_LABELS },
    sizes,
  );
  const layers = layersOf(sizes);
  const onCover = coverTables(tables, booklet);
  if (paper.kind === 'projector') {
    const shapes = planeShapes(
      compact([...pieces, cover(head, lines, onCover, 'projector')]),
      sizes,
    );
    const page = projectorPage(title, shapes, inkOf(shapes).box, display.unit);
    const scale: PdfLayer = { name: SCALE_LAYER, locked: false };
    return { title, pages: [page], layers: [...layers, scale], summary: measured(page) };
  }
  if (paper.kind === 'roll') {
    const parts = [...pieces, cover(head, lines, onCover, 'paper')];
    const page = rollPage(title, parts, sizes, paper, options.margin);
    return { title, pages: [page], layers, summary: measured(page) };
  }
  const isLarge = !isTiled(paper);
  const covered = (width: number): PlanePart => cover(head, lines, onCover, 'paper', width);
  const { plane, plain } = tiled(
    title,
    isLarge ? largeChoices(pieces, covered) : [pieces, upright(pieces)],
    sizes,
    paper,
    options,
  );
  const squares = { head, paper, options, sizes, lines, tables, plain, pages: [] };
  const { told, front, listed } = isLarge
    ? NO_WORDS
    : wordPages(plane, paper, options, tables, squares, booklet);
  const words = [...told, ...front, ...listed];
  const marks: PdfLayer = { name: SHEET_MARKS, locked: true };
  return {
    title,
    pages: [...words.map(asPage), ...tilePages(plane)],
    layers: [...layers, marks],
    summary: sheetsTold(
      plane.tiles.length,
      plain,
      words.length,
      isLarge ? undefined : told.length + 1,
    ),
  };
}

/** A cover among the pieces has the tables that no booklet has, without what is drawn for them. */
function coverTables(tables: readonly SizeTable[], booklet: Booklet | undefined): CoverTables {
  const shown = booklet === undefined ? tables.map((table) => ({ ...table, pictures: [] })) : [];
  return { known: tables, shown };
}

/** The pages before the sheets, in three parts. */
interface WordPages {
  readonly told: readonly Scene[];
  readonly front: readonly Scene[];
  readonly listed: readonly Scene[];
}

const NO_WORDS: WordPages = { told: [], front: [], listed: [] };

/** The booklet, the page with the test squares, and the tables where no booklet has them. */
function wordPages(
  plane: TiledPlane,
  paper: SheetPaper,
  options: PrintOptions,
  tables: readonly SizeTable[],
  squares: FrontPage,
  booklet: Booklet | undefined,
): WordPages {
  const pagesOf = (first: number): readonly Scene[] =>
    booklet === undefined
      ? []
      : bookletPages(
          { ...booklet, facts: [...booklet.facts, printFirst(first)] },
          options.booklet,
          pagePaper(paper),
          options.margin,
        );
  // A number takes no line of its own, so there are as many pages the second time.
  const told = pagesOf(pagesOf(1).length + 1);
  const listed = (first: number): readonly string[] => pagesTold(squares.sizes, plane.tiles, first);
  const shown = told.length > 0 ? [] : tables;
  const before = told.length + 1;
  // A page for a few lines is what they are to spare; in the first square there is room for them.
  const few = shown.length === 0 ? listed(before + 1) : [];
  const isFew = few.join(' ').length <= MOST_LISTED;
  return {
    told,
    front: [frontPage(plane, { ...squares, pages: isFew ? few : [] })],
    listed: tablePages(
      shown,
      isFew && shown.length === 0 ? () => [] : listed,
      plane.title,
      paper,
      options.margin,
      before,
    ),
  };
}

/** Letters about pages for which the first square has room. */
const MOST_LISTED = 350;

/** On the cover: which page comes first out of the printer. */
function printFirst(page: number): string {
  return `Print page ${page} first, at 100 %, and measure its squares.`;
}

/** On large sheets it may save one that a band stands upright, or that the words are narrow. */
function largeChoices(
  pieces: readonly PlanePart[],
  covered: (width: number) => PlanePart,
): readonly [readonly PlanePart[], ...(readonly PlanePart[])[]] {
  const standing = upright(pieces);
  const [wide, narrow] = [covered(COVER_WIDTHS.wide), covered(COVER_WIDTHS.narrow)];
  return [
    [...pieces, wide],
    [...pieces, narrow],
    [...standing, wide],
    [...standing, narrow],
  ];
}

/** A band stands upright. */
function upright(pieces: readonly PlanePart[]): readonly PlanePart[] {
  return pieces.map((piece) => (isLying(piece) ? turned(piece) : piece));
}

function isLying({ box: { left, top, right, bottom } }: PlanePart): boolean {
  return right - left > bottom - top;
}

/** The page of a booklet before sheets of a paper: its own, or half of one that is twice as large. */
function pagePaper(paper: SheetPaper): SheetPaper {
  const half: Readonly<Record<string, string>> = { a3: 'a4', tabloid: 'letter' };
  return sheetNamed(half[paper.name] ?? paper.name);
}

function layersOf(sizes: readonly CalledSize[]): readonly PdfLayer[] {
  return [
    ...sizes.map((size) => ({ name: sizeWords(size), locked: false })),
    { name: ALL_SIZES, locked: true },
  ];
}

/** How many sheets there are, what comes before them, and which page has the test squares. */
function sheetsTold(
  sheets: number,
  plain: number,
  front: number,
  squares: number | undefined,
): string {
  const pages = squares === undefined ? '' : ` after ${front} of instructions and tables`;
  const first =
    squares === undefined ? '' : `; print page ${squares} first and measure its squares`;
  return `${counted(sheets, 'sheet')}${pages}; a plain grid takes ${plain}${first}`;
}

function measured({ scene: { width, height } }: PdfPage): string {
  return `one sheet of ${Math.round(width)} x ${Math.round(height)} mm`;
}

/** A page of words alone, without a window on the pieces. */
export function asPage(scene: Scene): PdfPage {
  return { scene, windows: [] };
}
