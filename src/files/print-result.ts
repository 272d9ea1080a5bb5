/** Prints a graded result with everything that goes with it. */
import { fabricNeeds } from '../fabric/fabric-needs';
import { cutPieces } from '../pattern/cut-pieces';
import type { GradeResult } from '../jobs/grade-chart';
import { fabricTable } from './fabric-table';
import type { PrintFile } from './print-files';
import { printFiles } from './print-files';
import type { PrintRequest } from '../print/print-options';
import { readPrintOptions } from '../print/print-options';

/** The files of `printFiles` with the table of the cloth to buy. Throws the same errors. */
export async function printResult(
  result: GradeResult,
  request: PrintRequest,
): Promise<readonly PrintFile[]> {
  // Laying out cloth takes a while, so what cannot be printed anyway is refused before.
  readPrintOptions(request);
  const sizes = result.shown.map(({ label, pieces, parameters }) => ({
    label,
    pieces: cutPieces(pieces, parameters),
  }));
  // A lay for cloth with a nap serves for plain cloth as well.
  const needs = fabricNeeds(sizes, { naps: ['with'] });
  return printFiles(result, request, [fabricTable(needs)]);
}
