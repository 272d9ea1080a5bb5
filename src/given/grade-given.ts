/** A given pattern and its rules in, every size out. */
import type { GradedPattern, RuleTexts, SizedPieces } from '../grade/graded-range';
import { roundCumulative } from '../grade/rounding';
import { applyRules, deriveRules } from '../grade/rules';
import { stackOn } from '../grade/stack';
import type { Point } from '../geometry/point';
import { add, quarterTurn, scale } from '../geometry/point';
import type { Piece } from '../pattern/piece';
import { cutGiven } from './cut-given';
import { moverOf, movedPiece } from './move-piece';
import type { GivenPattern, GivenPiece } from './pattern';
import type { GivenRule, GivenRules } from '../rule-sheet/point-rules';

/** How fine the rules of a given pattern are, and how its sizes lie on each other. */
export interface GivenOptions {
  /** mm; undefined leaves the rules exact. */
  readonly roundingStep: number | undefined;
  /** The point on which the sizes of each piece that has it are laid; empty for none. */
  readonly stackPoint: string;
}

/** Grades every piece for every size of the rules. */
export function gradeGiven(
  pattern: GivenPattern,
  rules: GivenRules,
  { roundingStep, stackPoint }: GivenOptions,
): GradedPattern {
  const exact = gradedPieces(pattern, rules).map((pieces) =>
    pieces.map((piece) => stackOn(piece, stackPoint)),
  );
  const derived = deriveRules(exact, rules.base);
  const applied = roundingStep === undefined ? derived : roundCumulative(derived, roundingStep);
  const sizes = roundingStep === undefined ? exact : applyRules(exact[rules.base] ?? [], applied);
  return {
    base: rules.sizes[rules.base] ?? '',
    roundingStep,
    plans: pattern.pieces.map(({ base }) => base.plan),
    rules: applied,
    sizes: rules.sizes.map((label, i) => sizedPieces(label, pattern, sizes[i] ?? [])),
  };
}

function sizedPieces(
  label: string,
  { pieces: given }: GivenPattern,
  pieces: readonly Piece[],
): SizedPieces {
  const cutPieces = cutGiven(given, pieces);
  return cutPieces === undefined ? { label, pieces } : { label, pieces, cutPieces };
}

/** The pieces of each size, exact and where the pattern has its own zero. */
export function gradedPieces(
  { pieces }: Pick<GivenPattern, 'pieces'>,
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
        own.map(({ i, moves }) => [i, turned(moves[size] as Point, mover.piece)] as const),
      ),
    ),
  );
}

/** A move along and square to the reference line as a move on the paper. */
export function turned(move: Point, { ruleX }: Pick<GivenPiece, 'ruleX'>): Point {
  if (ruleX.x === 1) return move;
  return add(scale(ruleX, move.x), scale(quarterTurn(ruleX), move.y));
}

/** The rules as typed, and for a point without one what it moves with. */
export function givenRuleTexts({ pieces }: GivenPattern, { ruled }: GivenRules): RuleTexts {
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
