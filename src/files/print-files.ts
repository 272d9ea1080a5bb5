/** The printed pattern of a graded result: a PDF file for each paper. */
import { PAIRED_WIDTHS } from '../fabric/cloth';
import { fabricNeeds } from '../fabric/fabric-needs';
import type { GradeResult } from '../jobs/grade-result';
import type { PrintFile } from '../print/print-drawing';
import { printDrawing } from '../print/print-drawing';
import type { PrintRequest } from '../print/print-options';
import { readPrintOptions } from '../print/print-options';
import type { SizeTable } from '../print/size-table';
import { bookletOf } from './booklet-content';
import { drawingOf } from './drawing-files';
import { cutSize, isLayable } from './fabric-files';
import { fabricTables, worthLaying } from './fabric-table';
import { printTables } from './print-tables';

/**
 * One file a paper with the tables of bodies and garments, as far as they are known, and of the cloth
 * to buy. Throws InputError as `printDrawing` does.
 */
export async function printFiles(
  result: GradeResult,
  request: PrintRequest,
): Promise<readonly PrintFile[]> {
  // Laying out cloth takes a while, so what cannot be printed anyway is refused before.
  const { booklet } = readPrintOptions(request);
  const measures = printTables(result);
  const cloth = clothTables(result);
  const told = booklet === 'none' ? undefined : bookletOf(result, measures, cloth);
  return printDrawing(drawingOf(result), [...measures, ...cloth], request, told);
}

function clothTables(result: GradeResult): readonly SizeTable[] {
  if (!isLayable(result)) return [];
  // A lay for cloth with a nap serves for plain cloth as well.
  return fabricTables(
    worthLaying(fabricNeeds(result.shown.map(cutSize), { widths: PAIRED_WIDTHS, naps: ['with'] })),
    { unit: result.display.unit },
  );
}
