/** Every seam of a graded pattern, walked in every size. */
import type { GradedPattern } from '../grade/graded-pattern';
import type { Piece } from '../pattern/piece';
import type { SeamPair } from '../pattern/seam-pair';
import type { PairWalk, Way } from './walk-pair';
import { goesOn, sewnEdges, wayOf } from './seam-way';
import { walkPair } from './walk-pair';

/** A seam, the way its sides run, and its walk in every size. */
export interface WalkedSeam {
  readonly pair: SeamPair;
  readonly way: Way;
  readonly walks: readonly PairWalk[];
  /** Whether it goes on at its start and at its end, as a seam of the edges beside it. */
  readonly goesOn: readonly [boolean, boolean];
}

/** Walks each pair in every size, the way that its sides run in the base. */
export function walkedSeams(
  { sizes, rules }: Pick<GradedPattern, 'sizes' | 'rules'>,
  pairs: readonly SeamPair[],
): readonly WalkedSeam[] {
  const base = sizes[rules.base]?.pieces ?? [];
  const areSewn = sewnEdges(pairs);
  return pairs.map((pair) => {
    const way = wayOf(base, pair, areSewn);
    const walks = sizes.map(({ pieces, parameters }) => walkPair(pieces, pair, way, parameters));
    const walk = walks[rules.base];
    return { pair, way, walks, goesOn: walk ? goesOn(walk, areSewn) : [false, false] };
  });
}

/** A seam walked on other pieces of a size, with the ease that it has in that size; mm. */
export function walkedOn(
  { pair, way, walks }: WalkedSeam,
  pieces: readonly Piece[],
  size: number,
): PairWalk {
  const walk = walkPair(pieces, { ...pair, ease: walks[size]?.ease ?? 0 }, way);
  return { ...walk, pair };
}
