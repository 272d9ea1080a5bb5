/** A drawing and its tables as a PDF file for each paper. */
import type { NestDrawing } from '../render/nest-drawing';
import { keyEntries } from '../render/size-style';
import { linesShown } from '../render/nest-drawing';
import { linesNote, OF_ALL_SIZES } from '../render/captions';
import type { PdfPage } from '../render/pdf';
import type { PdfLayer } from '../render/pdf-layers';
import { COVER_WIDTHS, cover } from './cover';
import { frontPage } from './front-page';
import { inkOf } from './ink';
import { imprintWords } from '../table/imprint';
import type { Paper } from './paper';
import type { PlanePart } from './plane';
import { ALL_SIZES, drawnSizes, pieceParts, planeShapes, sizeLayer } from './plane';
import type { PrintOptions, PrintRequest } from './print-options';
import { readPrintOptions } from './print-options';
import { GRID_LAYER, projectorPage } from './projector';
import { rollPage } from './roll-page';
import { compact } from './side-by-side';
import type { SizeTable } from './size-table';
import { tablePages } from './table-pages';
import { SHEET_MARKS } from './tile-page';
import { tilePages, tiled } from './tiled';
import { turned } from './turned';

/** A file, and what there is to say about its sheets. */
export interface PrintFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly summary: string;
}

/**
 * One file a paper, in the order asked for; the same drawing gives the same bytes. Throws InputError
 * `paper-unknown`, `paper-too-small`, `paper-too-large`, `bad-option`, `character-unprintable`.
 */
export async function printDrawing(
  drawing: NestDrawing,
  tables: readonly SizeTable[],
  request: PrintRequest,
): Promise<readonly PrintFile[]> {
  const options = readPrintOptions(request);
  // The library for PDF is large, and only wanted here.
  const { pdf } = await import('../render/pdf');
  const files: PrintFile[] = [];
  for (const paper of options.papers) {
    const { title, pages, layers, summary } = printedDrawing(drawing, tables, paper, options);
    files.push({
      name: fileName(paper),
      bytes: await pdf(title, layers, pages, drawing.imprint),
      summary,
    });
  }
  return files;
}

function fileName({ kind, name }: Paper): string {
  return kind === 'projector' ? 'projector.pdf' : `print-${name}.pdf`;
}

/** A file before it is written. */
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

/** The pages of one paper. */
export function printedDrawing(
  drawing: NestDrawing,
  tables: readonly SizeTable[],
  paper: Paper,
  options: PrintOptions,
): Printed {
  const { title, imprint = {}, display } = drawing;
  const head = { title, imprint: imprintWords(imprint) };
  const sizes = drawnSizes(drawing);
  const key = keyEntries(sizes, linesShown(drawing) === 'both');
  const note = [linesNote(drawing, sizes.length), ...(sizes.length > 1 ? [OF_ALL_SIZES] : [])];
  const lines = { note: note.join(' '), key };
  const pieces = pieceParts(
    { ...drawing, labelType: paper.kind === 'projector' ? LABELS : PAPER_LABELS },
    sizes,
  );
  const layers = layersOf(sizes.map(({ label }) => label));
  if (paper.kind === 'projector') {
    const shapes = planeShapes(
      compact([...pieces, cover(head, sizes, lines, tables, 'projector')]),
      sizes,
    );
    const page = projectorPage(title, shapes, inkOf(shapes).box, display.unit);
    const grid: PdfLayer = { name: GRID_LAYER, locked: false };
    return { title, pages: [page], layers: [...layers, grid], summary: measured(page) };
  }
  if (paper.kind === 'roll') {
    const parts = [...pieces, cover(head, sizes, lines, tables, 'paper')];
    const page = rollPage(title, parts, sizes, paper, options.margin);
    return { title, pages: [page], layers, summary: measured(page) };
  }
  const isLarge = paper.width >= LARGE;
  const covered = (width: number): PlanePart => cover(head, sizes, lines, tables, 'paper', width);
  const { plane, plain } = tiled(
    title,
    isLarge ? largeChoices(pieces, covered) : [pieces],
    sizes,
    paper,
    options,
  );
  const front = isLarge
    ? []
    : [
        frontPage(plane, { imprint: head.imprint, paper, options, sizes, lines, tables, plain }),
        ...tablePages(plane, tables, paper, options.margin, 1),
      ];
  const marks: PdfLayer = { name: SHEET_MARKS, locked: true };
  return {
    title,
    pages: [...front.map((scene) => ({ scene, windows: [] })), ...tilePages(plane)],
    layers: [...layers, marks],
    summary: sheetsTold(plane.tiles.length, plain, front.length),
  };
}

/** On large sheets it may save one that a band stands upright, or that the words are narrow. */
function largeChoices(
  pieces: readonly PlanePart[],
  covered: (width: number) => PlanePart,
): readonly [readonly PlanePart[], ...(readonly PlanePart[])[]] {
  const upright = pieces.map((piece) => (isLying(piece) ? turned(piece) : piece));
  const [wide, narrow] = [covered(COVER_WIDTHS.wide), covered(COVER_WIDTHS.narrow)];
  return [
    [...pieces, wide],
    [...pieces, narrow],
    [...upright, wide],
    [...upright, narrow],
  ];
}

function isLying({ box: { left, top, right, bottom } }: PlanePart): boolean {
  return right - left > bottom - top;
}

function layersOf(labels: readonly string[]): readonly PdfLayer[] {
  return [
    ...labels.map((label) => ({ name: sizeLayer(label), locked: false })),
    { name: ALL_SIZES, locked: true },
  ];
}

function sheetsTold(sheets: number, plain: number, front: number): string {
  const pages = front === 0 ? '' : ` after ${front} of instructions and tables`;
  return `${sheets === 1 ? '1 sheet' : `${sheets} sheets`}${pages}; a plain grid takes ${plain}`;
}

function measured({ scene: { width, height } }: PdfPage): string {
  return `one sheet of ${Math.round(width)} x ${Math.round(height)} mm`;
}
