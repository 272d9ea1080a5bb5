/** The slip that explains what tells clearly better than any other. */
import { distance } from '../../geometry/point';
import { CAUSE_CLEAR_BY, CAUSE_TOLD_BY, KIND_CLEAR_BY, SEAM_TELLS } from '../../tolerance';
import type { Weigher } from '../evidence/weigh';
import type { SuspectedSlip } from './suspected-slip';

/** A slip and what speaks for it in nats. */
export interface Weighed {
  readonly slip: SuspectedSlip;
  readonly gain: number;
}

/** The slips by what speaks for them; those that cannot matter are not weighed. */
export function rank(
  slips: readonly SuspectedSlip[],
  { bound, gain }: Weigher,
): readonly Weighed[] {
  const bounded = slips
    .map((slip) => ({ slip, most: bound(slip) }))
    .sort((a, b) => b.most - a.most);
  const weighed: Weighed[] = [];
  let best = 0;
  for (const { slip, most } of bounded) {
    const least = Math.max(0, best - 2 * CAUSE_CLEAR_BY);
    if (most < least) break;
    const own = gain(slip, least);
    best = Math.max(best, own);
    if (own >= least) weighed.push({ slip, gain: own });
  }
  return weighed.sort((a, b) => b.gain - a.gain);
}

/** The best slip, if it explains what tells, and no other that is told in other words is near it. */
export function clearCause(
  ranked: readonly Weighed[],
  explained: (slip: SuspectedSlip) => boolean,
  least = CAUSE_TOLD_BY,
): SuspectedSlip | undefined {
  const [best] = ranked;
  if (best === undefined || best.gain < least || !explained(best.slip)) return undefined;
  const isRival = ({ slip, gain }: Weighed): boolean =>
    best.gain - gain < (isSameKind(slip, best.slip) ? KIND_CLEAR_BY : CAUSE_CLEAR_BY) &&
    !isAlike(slip, best.slip) &&
    !hasSameRepairs(slip, best.slip);
  return ranked.some(isRival) ? undefined : best.slip;
}

/** One kind of slip at one point: whether along one axis or both, in one size or all. */
function isSameKind(a: SuspectedSlip, b: SuspectedSlip): boolean {
  return a.at.piece === b.at.piece && a.at.point === b.at.point && a.kind === b.kind;
}

function isAlike(a: SuspectedSlip, b: SuspectedSlip): boolean {
  return a.at.piece === b.at.piece && a.at.point === b.at.point && a.id === b.id;
}

/**
 * Slips that make the same of the same rules, within what a seam tells: nothing can tell them apart,
 * and the likelier is told.
 */
function hasSameRepairs(a: SuspectedSlip, b: SuspectedSlip): boolean {
  if (a.repairs.length !== b.repairs.length) return false;
  return a.repairs.every(({ at, moves }) => {
    const other = b.repairs.find((own) => own.at.piece === at.piece && own.at.point === at.point);
    return moves.every((move, i) => {
      const theirs = other?.moves[i];
      return theirs !== undefined && distance(move, theirs) <= SEAM_TELLS;
    });
  });
}
