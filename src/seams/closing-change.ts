/** The smallest change of one rule that would close the gap of a seam in one size. */
import type { Pattern } from '../pattern/pattern';
import type { GivenRules, RuledPoint } from '../rule-sheet/point-rules';
import type { Piece } from '../pattern/piece';
import type { Point } from '../geometry/point';
import { dot, length, point, scale } from '../geometry/point';
import type { Regrader } from './regrade';
import type { PairWalk, Way } from './walk-pair';
import { walkPair } from './walk-pair';
import type { SlipSearch } from './slip-search';
import { ALIKE_CHANGES, GAP_FOLLOWS, RULE_PROBE } from '../tolerance';

/** A change in mm to the move of a point, along and square to its reference line. */
export interface RuleChange {
  readonly piece: string;
  readonly point: string;
  readonly change: Point;
}

/**
 * Of all points with rules on the pieces of one side the one whose move must change least, to first order;
 * of equally good ones the first. Undefined if no rule has a say.
 */
export function closingChange(
  { pair: stated, ease, gap }: PairWalk,
  way: Way,
  pieces: readonly Piece[],
  size: number,
  { pattern, rules, regrade }: Pick<Graded, 'pattern' | 'rules' | 'regrade'>,
  side: PairWalk['pair']['sides'][number],
): RuleChange | undefined {
  const pair = { ...stated, ease };
  let best: RuleChange | undefined;
  for (const candidate of ruledPoints(pattern, rules, [side])) {
    const at = regrade.moveOf(candidate, size);
    const gapWith = (x: number, y: number): number => {
      const moved = regrade.withMove(candidate, size, point(at.x + x, at.y + y));
      const changed = pieces.map((piece, p) => (p === candidate.piece ? moved : piece));
      return walkPair(changed, pair, way).gap;
    };
    const slope = point(
      (gapWith(RULE_PROBE, 0) - gap) / RULE_PROBE,
      (gapWith(0, RULE_PROBE) - gap) / RULE_PROBE,
    );
    const steep = dot(slope, slope);
    if (steep < GAP_FOLLOWS) continue;
    const change = scale(slope, -gap / steep);
    const plan = pattern.pieces[candidate.piece]?.base.plan;
    const name = { piece: plan?.name ?? '', point: plan?.pointNames[candidate.point] ?? '' };
    const enough = best === undefined ? Infinity : length(best.change);
    if (length(change) < enough / ALIKE_CHANGES) best = { ...name, change };
  }
  return best;
}

/** What a walk knows of the grade besides the pieces. */
export interface Graded {
  readonly pattern: Pattern;
  readonly rules: GivenRules;
  readonly regrade: Regrader;
  readonly search: SlipSearch;
}

/** The ruled points of the pieces on the sides of a seam. */
export function ruledPoints(
  { pieces }: Pattern,
  { ruled }: GivenRules,
  sides: readonly PairWalk['pair']['sides'][number][],
): readonly RuledPoint[] {
  const names = sides.flatMap(({ edges }) => edges.map(({ piece }) => piece));
  return pieces.flatMap(({ base }, piece) =>
    names.includes(base.plan.name)
      ? [...(ruled[piece]?.keys() ?? [])].map((p) => ({ piece, point: p }))
      : [],
  );
}
