/** A given pattern and its rules in, every size out. */

import type { Point } from '../geometry/point';
import { add, quarterTurn, scale } from '../geometry/point';
import type { Piece } from '../pattern/piece';
import type { Pattern, PatternPiece } from '../pattern/pattern';
import type { GivenRule, GivenRules, RuleTexts } from '../rule-sheet/point-rules';
import { moverOf, movedPiece } from './move-piece';

/** The pieces of each size, exact and where the pattern has its own zero. */
export function gradedPieces(
  { pieces }: Pick<Pattern, 'pieces'>,
  { ruled, sizes }: Pick<GivenRules, 'ruled' | 'sizes'>,
): readonly (readonly Piece[])[] {
  const movers = pieces.map((piece, p) => {
    const own = [...(ruled[p] ?? [])].map(([i, { moves }]) => ({ i, moves }));
    return { own, mover: moverOf(piece, new Set(own.map(({ i }) => i))) };
  });
  return sizes.map((_, size) =>
    movers.map(({ own, mover }) =>
      movedPiece(
        mover,
        own.map(({ i, moves }) => [i, moveOnPaper(moves[size] as Point, mover.piece)] as const),
      ),
    ),
  );
}

/** A move along and square to the reference line as a move on the paper. */
export function moveOnPaper(move: Point, { ruleX }: Pick<PatternPiece, 'ruleX'>): Point {
  if (ruleX.x === 1) return move;
  return add(scale(ruleX, move.x), scale(quarterTurn(ruleX), move.y));
}

/** The rules as typed, and for a point without one what it moves with. */
export function givenRuleTexts({ pieces }: Pattern, { ruled }: GivenRules): RuleTexts {
  return pieces.map((piece, p) => {
    const own = ruled[p] ?? new Map<number, GivenRule>();
    const { plan } = piece.base;
    const followers = new Map(
      moverOf(piece, new Set(own.keys())).followers.map((follower) => [follower.point, follower]),
    );
    return plan.pointNames.map((_, i) => {
      const rule = own.get(i);
      if (rule !== undefined) return { x: { text: rule.text.x }, y: { text: rule.text.y } };
      const follower = followers.get(i);
      const text =
        follower === undefined
          ? ''
          : follower.from === follower.to
            ? `with ${plan.pointNames[follower.from] ?? ''}`
            : `between ${plan.pointNames[follower.from] ?? ''} and ${plan.pointNames[follower.to] ?? ''}`;
      return { x: { text }, y: { text } };
    });
  });
}
