/** A drawing and its tables as a PDF file for each paper. */
import type { NestDrawing } from '../render/nest-drawing';
import type { Booklet } from './booklet/booklet';
import { bookletPages } from './booklet/booklet-pages';
import type { Paper, SheetPaper } from './paper';
import { paperTitle, sheetNamed } from './paper';
import type { PrintRequest } from './print-options';
import { readPrintOptions } from './print-options';
import type { SizeTable } from './size-table';
import { asPage, isTiled, printedDrawing } from './printed-drawing';

/** The booklet in a file of its own. */
const BOOKLET_FILE = 'booklet.pdf';

/** The picture for a projector, which has no tables. */
const PROJECTOR_FILE = 'projector.pdf';

/** A file, and what there is to say about its sheets. */
export interface PrintFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly summary: string;
}

/** The printed file that has the tables: the booklet if it is a file of its own, else the first on paper. */
export function fileWithTables(files: readonly PrintFile[]): PrintFile | undefined {
  return (
    files.find(({ name }) => name === BOOKLET_FILE) ??
    files.find(({ name }) => name !== PROJECTOR_FILE)
  );
}

/**
 * One file a paper, in the order asked for, and the booklet in a file of its own where a paper has no
 * place for it; the same drawing gives the same bytes. Throws InputError `paper-unknown`,
 * `paper-too-small`, `paper-too-large`, `bad-option`, `character-unprintable`.
 */
export async function printDrawing(
  drawing: NestDrawing,
  tables: readonly SizeTable[],
  request: PrintRequest,
  booklet?: Booklet,
): Promise<readonly PrintFile[]> {
  const options = readPrintOptions(request);
  // The library for PDF is large, and only wanted here.
  const { pdf } = await import('../render/pdf');
  const files: PrintFile[] = [];
  for (const paper of options.papers) {
    const { title, pages, layers, summary } = printedDrawing(
      drawing,
      tables,
      paper,
      options,
      booklet,
    );
    files.push({
      name: fileName(paper),
      bytes: await pdf(title, layers, pages, drawing.imprint),
      summary,
    });
  }
  if (booklet !== undefined && !options.papers.every(isTiled)) {
    const paper = bookletPaper(drawing);
    const pages = bookletPages(booklet, options.booklet, paper, options.margin);
    const bytes = await pdf(booklet.title, [], pages.map(asPage), drawing.imprint);
    const summary = `${pages.length} pages of ${paperTitle(paper)}`;
    if (pages.length > 0) files.push({ name: BOOKLET_FILE, bytes, summary });
  }
  return files;
}

/** What home printers take where the pattern's lengths are shown. */
function bookletPaper({ display }: NestDrawing): SheetPaper {
  return sheetNamed(display.unit === 'in' ? 'letter' : 'a4');
}

function fileName({ kind, name }: Paper): string {
  return kind === 'projector' ? PROJECTOR_FILE : `print-${name}.pdf`;
}
