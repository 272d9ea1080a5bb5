/** What of a result is cut, as a text by which two sets of files are known to be of the same skirt. */
import type { GradeResult } from '../jobs/grade-result';

/** Decimals of a millimeter. No tolerance: of what is written. */
const DECIMALS = 3;

/**
 * Every size with its pieces, their edges and their allowances. Where the sizes are stacked, which of them
 * are shown and in which unit makes no difference.
 */
export function cutShapes({ range }: GradeResult): string {
  return JSON.stringify(
    range.sizes.map(({ label, pieces, parameters }) => [
      label,
      [...parameters].map(([name, value]) => [name, value.toFixed(DECIMALS)]),
      pieces.map(({ plan: { name, edges, notches, cuttings }, points }) => [
        ...[name, edges, notches, cuttings],
        points.map(({ x, y }) => [
          (x - (points[0]?.x ?? 0)).toFixed(DECIMALS),
          (y - (points[0]?.y ?? 0)).toFixed(DECIMALS),
        ]),
      ]),
    ]),
  );
}
