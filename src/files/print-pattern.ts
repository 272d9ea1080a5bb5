/** The printed pattern of somebody else's pattern: cut lines where it has them, else net lines. */
import type { PatternResult } from '../jobs/grade-pattern';
import { patternDrawing } from './pattern-files';
import type { PrintFile } from './print-files';
import { printDrawing } from './print-files';
import type { PrintRequest } from '../print/print-options';

/** One file a paper, without tables of bodies, which are not known. Throws what `printFiles` throws. */
export function printPattern(
  result: PatternResult,
  request: PrintRequest,
): Promise<readonly PrintFile[]> {
  return printDrawing(patternDrawing(result), [], request);
}
