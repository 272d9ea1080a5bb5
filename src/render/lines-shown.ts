/** Which lines of a pattern a drawing shows. */

/** `net`: the lines to sew along; `cut`: the lines to cut along. */
export type LinesShown = 'net' | 'cut' | 'both';

/** Every choice, for options and for messages. */
export const LINES_SHOWN: readonly LinesShown[] = ['net', 'cut', 'both'];

/** What the lines of a sheet stand for, in a sentence for whoever cuts. */
export function linesNote(lines: LinesShown): string {
  switch (lines) {
    case 'net':
      return 'Net lines: seam allowances are not included, except the zip allowance.';
    case 'cut':
      return 'Cut along the lines: seam allowances are included, as each piece says. Sewing lines are not drawn.';
    case 'both':
      return 'Cut along the strong lines, sew along the thin dashed ones: seam allowances are included, as each piece says.';
  }
}
