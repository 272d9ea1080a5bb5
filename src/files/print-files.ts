/** The printed pattern of a graded result: a PDF file for each paper. */
import type { GradeResult } from '../jobs/grade-chart';
import type { NestDrawing } from '../render/nest-drawing';
import { linesShown } from '../render/nest-drawing';
import type { PdfLayer } from '../render/pdf-layers';
import type { PdfPage } from '../render/pdf';
import type { BinaryFile } from './result-files';
import { drawingOf } from './result-files';
import { cover } from '../print/cover';
import { frontPage } from '../print/front-page';
import { inkOf } from '../print/ink';
import type { Paper } from '../print/paper';
import { ALL_SIZES, drawnSizes, pieceParts, planeShapes, sizeLayer } from '../print/plane';
import type { PrintOptions, PrintRequest } from '../print/print-options';
import { readPrintOptions } from '../print/print-options';
import { printTables } from './print-tables';
import { GRID_LAYER, projectorPage } from '../print/projector';
import { rollPage } from '../print/roll-page';
import { compact } from '../print/side-by-side';
import type { SizeTable } from '../print/size-table';
import { tablePages } from '../print/table-pages';
import { SHEET_MARKS } from '../print/tile-page';
import { tilePages, tiled } from '../print/tiled';

/** A file, and what there is to say about its sheets. */
export interface PrintFile extends BinaryFile {
  readonly summary: string;
}

/**
 * One file a paper, in the order asked for; the same result gives the same bytes. The tables of
 * bodies and garments are followed by `more`, if there are more to print. Throws InputError
 * `paper-unknown`, `paper-too-small`, `paper-too-large`, `bad-option`, `character-unprintable`.
 */
export function printFiles(
  result: GradeResult,
  request: PrintRequest,
  more: readonly SizeTable[] = [],
): Promise<readonly PrintFile[]> {
  return printDrawing(drawingOf(result), [...printTables(result), ...more], request);
}

/** The same of any drawing, with its tables. Throws the same errors. */
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
    files.push({ name: fileName(paper), bytes: await pdf(title, layers, pages), summary });
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

/** What the file of one paper will hold. Throws InputError `paper-too-small` for a narrow roll. */
export function printed(result: GradeResult, paper: Paper, options: PrintOptions): Printed {
  return printedDrawing(drawingOf(result), printTables(result), paper, options);
}

function printedDrawing(
  drawing: NestDrawing,
  tables: readonly SizeTable[],
  paper: Paper,
  options: PrintOptions,
): Printed {
  const { title, display } = drawing;
  const sizes = drawnSizes(drawing);
  const lines = linesShown(drawing);
  const pieces = pieceParts(
    { ...drawing, labelType: paper.kind === 'projector' ? LABELS : PAPER_LABELS },
    sizes,
  );
  const layers = layersOf(sizes.map(({ label }) => label));
  if (paper.kind === 'projector') {
    const shapes = planeShapes(compact([...pieces, cover(title, sizes, lines, [])]), sizes);
    const page = projectorPage(title, shapes, inkOf(shapes).box, display.unit);
    const grid: PdfLayer = { name: GRID_LAYER, locked: false };
    return { title, pages: [page], layers: [...layers, grid], summary: measured(page) };
  }
  if (paper.kind === 'roll') {
    const parts = [...pieces, cover(title, sizes, lines, tables)];
    const page = rollPage(title, parts, sizes, paper, options.margin);
    return { title, pages: [page], layers, summary: measured(page) };
  }
  const isLarge = paper.width >= LARGE;
  const parts = isLarge ? [...pieces, cover(title, sizes, lines, tables)] : pieces;
  const { plane, plain } = tiled(title, parts, sizes, paper, options);
  const front = isLarge
    ? []
    : [
        frontPage(plane, { paper, options, sizes, lines, plain }),
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
