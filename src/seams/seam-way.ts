/** How the two sides of a seam run along each other: decided once, from the base. */
import { dot, subtract, unit } from '../geometry/point';
import type { Piece } from '../pattern/piece';
import { pieceNamed, pointOf } from '../pattern/piece';
import type { SeamPair } from '../pattern/seam-pair';
import { RUNS_ACROSS, SAME_PLACE } from '../tolerance';
import type { Walk } from './seam-walk';
import type { PairWalk, Way } from './walk-pair';
import { walkPair } from './walk-pair';

/** Whether two edges, each as `piece.edge`, are sewn to each other. */
export type AreSewn = (first: string, second: string) => boolean;

/** Finds which edges the pairs of a pattern sew to each other. */
export function sewnEdges(pairs: readonly SeamPair[]): AreSewn {
  const sewn = new Map<string, Set<string>>();
  for (const { sides } of pairs)
    for (const [own, other] of [sides, sides.toReversed()])
      for (const a of own?.edges ?? []) {
        const known = sewn.get(`${a.piece}.${a.edge}`) ?? new Set();
        for (const b of other?.edges ?? []) known.add(`${b.piece}.${b.edge}`);
        sewn.set(`${a.piece}.${a.edge}`, known);
      }
  return (first, second) => sewn.get(first)?.has(second) === true;
}

/** mm of misfit that a degree of a corner counts for when the way is chosen. */
const DEGREE = 1;

/** What tells how the sides of a seam run along each other, from the surest sign to the weakest. */
export interface SeamFit {
  readonly way: Way;
  /** Ends at which points of one name meet. */
  readonly namesakes: number;
  /** Ends at which the edges beside the seam are sewn to each other as well. */
  readonly goOn: number;
  /** Ends at which both edges beside the seam lie on a fold, or neither does. */
  readonly folds: number;
  /** mm by which notches and joints are apart, and degrees by which corners turn. */
  readonly misfit: number;
}

/** Whether one fit is clearly better than another. */
export function betterFit(one: SeamFit, other: SeamFit): boolean {
  for (const sign of ['namesakes', 'goOn', 'folds'] as const)
    if (one[sign] !== other[sign]) return one[sign] > other[sign];
  return one.misfit < other.misfit - SAME_PLACE;
}

/**
 * The way that is stated; else the one in which points of the same name meet at the ends; else the
 * one in which the edges beside the seam are sewn to each other as well; else the one in which a fold
 * meets a fold, as the center of a collar does that of the back; else the one in which notches, joints and corners fit best in the base. A corner at which no edge runs on tells nothing.
 * Without any of these signs the sides run as they are drawn: both down, or one against the other, as
 * on pieces that are laid down side by side.
 */
export function wayOf(base: readonly Piece[], pair: SeamPair, areSewn: AreSewn): Way {
  return pair.way ?? seamFit(base, pair, areSewn).way;
}

/** How well the sides fit, the way in which they fit best or that is stated. */
export function seamFit(base: readonly Piece[], pair: SeamPair, areSewn: AreSewn): SeamFit {
  const fits = (way: Way): SeamFit & { readonly walk: PairWalk } => {
    const walk = walkPair(base, { ...pair, ease: 0 }, way);
    const goOn = goesOn(walk, areSewn).filter((does) => does).length;
    const folds = foldsMet(base, walk);
    return { way, walk, namesakes: namesakes(walk), goOn, folds, misfit: misfit(walk) };
  };
  if (pair.way !== undefined) return fits(pair.way);
  const [same, opposite] = [fits('same'), fits('opposite')];
  if (betterFit(same, opposite)) return same;
  if (betterFit(opposite, same)) return opposite;
  const [first, second] = same.walk.walks.map((walk) => direction(base, walk));
  return first && second && dot(first, second) > 0 ? same : opposite;
}

/**
 * Whether a seam goes on at each of its ends: the edges beside it are sewn to each other there, or it
 * closes to a ring, as that of a sleeve does at the underarm.
 */
export function goesOn(
  { walks: [first, second] }: PairWalk,
  areSewn: AreSewn,
): readonly [boolean, boolean] {
  const isRing = [first, second].every(({ beside: [start, end] }) => areSewn(start, end));
  return [
    isRing || areSewn(first.beside[0], second.beside[0]),
    isRing || areSewn(first.beside[1], second.beside[1]),
  ];
}

function namesakes({ walks: [first, second] }: PairWalk): number {
  const bare = (name: string): string => name.replace(/^.*\./u, '');
  return first.ends.filter((end, i) => bare(end) === bare(second.ends[i] ?? '')).length;
}

function foldsMet(base: readonly Piece[], { walks: [first, second] }: PairWalk): number {
  const isFold = (beside: string): boolean => {
    const [piece = '', seam = ''] = beside.split('.');
    const { outline } = pieceNamed(base, piece).plan;
    return outline.some((edge) => edge.seam === seam && edge.kind === 'fold');
  };
  return first.beside.filter((own, i) => isFold(own) === isFold(second.beside[i] ?? '')).length;
}

function misfit({ walks: [first, second], stretches, angleSums }: PairWalk): number {
  const notches = stretches.reduce((sum, { lengths: [a, b] }) => sum + Math.abs(a - b), 0);
  const joints =
    first.joints.length === second.joints.length
      ? first.joints.reduce((sum, at, i) => sum + Math.abs(at - (second.joints[i] ?? NaN)), 0)
      : 0;
  const corners = angleSums.reduce(
    (sum, angle) => sum + Math.min(Math.abs(angle - 180), RUNS_ACROSS),
    0,
  );
  return notches + joints + DEGREE * corners;
}

/** The direction from end to end as it is drawn; undefined where the ends are one. */
function direction(base: readonly Piece[], { ends }: Walk) {
  const [from, to] = ends.map((end) => {
    const [piece = '', point = ''] = end.split('.');
    return pointOf(pieceNamed(base, piece), point);
  });
  if (from === undefined || to === undefined) return undefined;
  const along = subtract(to, from);
  return Math.hypot(along.x, along.y) > SAME_PLACE ? unit(along) : undefined;
}
