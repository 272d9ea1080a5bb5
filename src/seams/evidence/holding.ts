/** How well the seams, dart legs and folds of a size hold, beside how they hold in the base. */
import { length, subtract } from '../../geometry/point';
import type { Edge, Piece } from '../../pattern/piece';
import { pointOf } from '../../pattern/piece';
import { meetsItself } from '../../pattern/seam-pair';
import { SEAM_WARNING } from '../../tolerance';
import type { PairWalk } from '../walk-pair';
import { misfit } from './misfit';

/** mm, or degrees at a corner, that nobody wonders at. */
const USUAL = 0.2;
const USUAL_TURN = 1;
/** What stretches and corners weigh beside the length of a seam. */
const STRETCH = 0.5;
const CORNER = 0.4;

/** What speaks against a seam in a size, in nats. */
export function seamMisfit(walk: PairWalk, base: PairWalk): number {
  let sum = meetsItself(walk.pair) ? 0 : misfit(walk.gap - base.gap, USUAL);
  if (walk.stretches.length > 1)
    for (const growth of stretchGrowths(walk, base)) sum += STRETCH * misfit(growth, USUAL);
  for (const end of [0, 1] as const) {
    const turn = walk.angleSums[end] - base.angleSums[end];
    if (walk.pair.runsOn[end] && !Number.isNaN(turn)) sum += CORNER * misfit(turn, USUAL_TURN);
  }
  return sum;
}

/** mm by which a seam is farther apart in a size than in the base, as a whole or from notch to notch. */
export function apart(walk: PairWalk, base: PairWalk): number {
  if (meetsItself(walk.pair)) return 0;
  const whole = Math.abs(walk.gap - base.gap);
  return Math.max(whole, ...(walk.stretches.length > 1 ? stretchGrowths(walk, base) : []));
}

/** Where ease may lie anywhere and no stretch has its own, what one stretch has more another may have less: only sums tell. */
function stretchGrowths({ pair, stretches, ease }: PairWalk, base: PairWalk): readonly number[] {
  const isFree = pair.spread === 'anywhere' && ease !== 0;
  return stretches.map(({ lengths: [a, b], ease: own }, i) => {
    if (isFree && own === undefined) return 0;
    const [c = NaN, d = NaN] = base.stretches[i]?.lengths ?? [];
    return Math.abs(a - b - (c - d));
  });
}

/** What speaks against a piece by itself: dart legs that no longer match, folds that turn. */
export function pieceMisfit(piece: Piece, base: Piece): number {
  return piece.plan.outline.reduce(
    (sum, edge) => sum + misfit(edgeGrowth(piece, base, edge), USUAL),
    0,
  );
}

/**
 * mm by which the legs of a dart differ more than in the base, or a fold leans off it. Legs that the
 * base has apart by more than a drawing is rounded to come apart farther as the dart grows, by right
 * rules too, so they tell nothing.
 */
export function edgeGrowth(piece: Piece, base: Piece, edge: Edge): number {
  switch (edge.kind) {
    case 'dart':
      return Math.abs(legs(base, edge)) > SEAM_WARNING
        ? 0
        : Math.abs(legs(piece, edge) - legs(base, edge));
    case 'fold': {
      const [now, then] = [piece, base].map((one) =>
        subtract(pointOf(one, edge.to), pointOf(one, edge.from)),
      );
      if (now === undefined || then === undefined) return 0;
      return Math.abs(now.x * then.y - now.y * then.x) / Math.max(1, length(then));
    }
    default:
      return 0;
  }
}

function legs(piece: Piece, { from, tip, to }: Edge & { kind: 'dart' }): number {
  const at = pointOf(piece, tip);
  return length(subtract(pointOf(piece, from), at)) - length(subtract(pointOf(piece, to), at));
}
