/** The graded pattern against a fresh draft of each size, at every point and along every curve. */
import { distance } from '../geometry/point';
import { segmentAt } from '../geometry/segment';
import type { DraftedPattern } from '../grade/graded-pattern';
import { draftedSizes } from '../grade/graded-pattern';
import type { Piece } from '../pattern/piece';
import { edgeSegments } from '../pattern/piece';
import { GRADE_REPRODUCES_DRAFT } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

const CHECK = 'graded-equals-draft';

/** Places compared along each curve, besides its ends. */
const PLACES = 16;

interface Deviation {
  readonly piece: string;
  readonly subject: string;
  readonly value: number;
}

/**
 * One finding a size with its worst deviation. A rounded coordinate lies on one of the two grid lines
 * beside it, so less than a step off, and a point by less than a step times the square root of two.
 */
export function checkGradedEqualsDraft(range: DraftedPattern, display: LengthDisplay): Finding[] {
  const tolerance = GRADE_REPRODUCES_DRAFT + (range.roundingStep ?? 0) * Math.SQRT2;
  return draftedSizes(range).map((size) => {
    const worst = worstDeviation(size.pieces, size.draft.pieces);
    const held = worst.value <= tolerance;
    return found({
      severity: held ? 'ok' : 'fail',
      check: CHECK,
      size: size.label,
      piece: worst.piece,
      subject: worst.subject,
      measured: worst.value,
      expected: 0,
      tolerance,
      message:
        `base plus rules ${held ? 'gives' : 'does not give'} the size that its own column drafts: ` +
        `${showLength(worst.value, display)} apart at ${worst.piece} ${worst.subject}`,
    });
  });
}

function worstDeviation(pieces: readonly Piece[], drafted: readonly Piece[]): Deviation {
  let worst: Deviation = { piece: '', subject: '', value: -1 };
  const note = (piece: string, subject: string, value: number): void => {
    // A value that is no number is the worst there is.
    if (!(value <= worst.value)) worst = { piece, subject, value };
  };
  pieces.forEach((graded, p) => {
    const draft = drafted[p] as Piece;
    const { plan } = graded;
    plan.pointNames.forEach((name, i) => {
      const [a, b] = [graded.points[i], draft.points[i]];
      note(plan.name, name, a && b ? distance(a, b) : NaN);
    });
    for (const edge of plan.outline) {
      if (edge.kind !== 'cubic') continue;
      const [a] = edgeSegments(graded, edge);
      const [b] = edgeSegments(draft, edge);
      for (let k = 1; k <= PLACES; k++) {
        const t = k / (PLACES + 1);
        note(plan.name, edge.seam, a && b ? distance(segmentAt(a, t), segmentAt(b, t)) : NaN);
      }
    }
  });
  return worst;
}
