/** Seams that are sewn together must be equally long in every size. */
import type { GradedRange } from '../grade/graded-range';
import { measureOf } from '../grade/graded-range';
import { SEAM_FAILURE, SEAM_MATCH, SEAM_WARNING } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding, Severity } from './finding';

/** A finding for the side seams of each size, the gravity by how far they are apart. */
export function checkSeamsMatch(range: GradedRange, display: LengthDisplay): Finding[] {
  return range.sizes.map((size) => {
    const front = measureOf(size, 'side_seam_front');
    const back = measureOf(size, 'side_seam_back');
    const gap = Math.abs(front - back);
    return {
      severity: seamSeverity(gap),
      check: 'seams-match',
      size: size.label,
      piece: 'front, back',
      subject: 'side',
      quantity: 'length',
      measured: front,
      expected: back,
      tolerance: SEAM_MATCH,
      source: 'common practice, no source: every seam pair walked in every size',
      message:
        gap <= SEAM_MATCH
          ? `front and back side seams match at ${showLength(front, display)}`
          : `the front side seam is ${showLength(front, display)}, the back one ` +
            `${showLength(back, display)}: ${showLength(gap, display)} apart`,
    };
  });
}

/** How grave a gap in mm between two edges is that are sewn together. */
export function seamSeverity(gap: number): Severity {
  if (gap <= SEAM_MATCH) return 'ok';
  if (gap <= SEAM_WARNING) return 'note';
  return gap <= SEAM_FAILURE ? 'warning' : 'fail';
}
