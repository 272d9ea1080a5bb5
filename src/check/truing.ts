/** What truing moved in every size, and whether it reached its aim. */
import type { DraftedPattern } from '../grade/graded-pattern';
import { draftedSizes } from '../grade/graded-pattern';
import { MEETS_TARGET } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/** A finding for each length that truing found in each size; one whose aim was missed fails. */
export function noteTruing(range: DraftedPattern, display: LengthDisplay): Finding[] {
  return draftedSizes(range).flatMap((size) =>
    size.draft.trued.map(({ piece, meaning, moved, left }): Finding => {
      const held = Math.abs(left) <= MEETS_TARGET;
      return found({
        severity: held ? 'ok' : 'fail',
        check: 'truing',
        size: size.label,
        piece,
        subject: meaning.split(',')[0] ?? meaning,
        measured: moved,
        source: "the engine's own rule: every seam is trued in every size",
        message: held
          ? `moved by ${showLength(moved, display)}: ${meaning}`
          : `could not be trued, ${showLength(left, display)} are left: ${meaning}`,
      });
    }),
  );
}
