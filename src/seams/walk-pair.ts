/** Both sides of a seam walked along each other. */
import type { SeamPair } from '../given/pattern';
import type { Piece } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';
import type { Walk } from './seam-walk';
import { walkSide, walkedBack } from './seam-walk';

/** A stretch between two places that meet: ends of the seam, or notches. */
export interface Stretch {
  readonly from: string;
  readonly to: string;
  /** mm on the first side, and on the second. */
  readonly lengths: readonly [number, number];
}

/** What walking a pair tells: how the lengths differ, and where. */
export interface PairWalk {
  readonly pair: SeamPair;
  readonly walks: readonly [Walk, Walk];
  /** mm by which the first side is longer than the second and its ease. */
  readonly gap: number;
  /** From notch to notch; one stretch where the notches of the sides do not match in number. */
  readonly stretches: readonly Stretch[];
  /** Sums in degrees of the corners that meet at the start and at the end. */
  readonly angleSums: readonly [number, number];
}

/** How two sides run along each other, decided once from the base. */
export type Way = 'same' | 'opposite';

/** Walks a pair in one size. Throws a RangeError for an edge that no piece has. */
export function walkPair(pieces: readonly Piece[], pair: SeamPair, way: Way): PairWalk {
  const first = walkSide(pieces, pair.sides[0]);
  const other = walkSide(pieces, pair.sides[1]);
  const second = way === 'same' ? other : walkedBack(other);
  return {
    pair,
    walks: [first, second],
    gap: first.length - second.length - pair.ease,
    stretches: stretchesOf(first, second),
    angleSums: [first.angles[0] + second.angles[0], first.angles[1] + second.angles[1]],
  };
}

/** mm of misfit that a degree of a corner counts for when the way is chosen. */
const DEGREE = 1;

/**
 * The way that is stated; else the one in which points of the same name meet at the ends; else the
 * one in which notches, joints and corners fit best in the base. Without any sign the sides run
 * against each other, as on pieces that are laid down side by side.
 */
export function wayOf(base: readonly Piece[], pair: SeamPair): Way {
  if (pair.way !== undefined) return pair.way;
  const ways = (['same', 'opposite'] as const).map((way) => {
    const walked = walkPair(base, pair, way);
    return { namesakes: namesakes(walked), misfit: misfit(walked) };
  });
  const [same, opposite] = ways;
  if (same === undefined || opposite === undefined) return 'opposite';
  if (same.namesakes !== opposite.namesakes) {
    return same.namesakes > opposite.namesakes ? 'same' : 'opposite';
  }
  return same.misfit < opposite.misfit - SAME_PLACE ? 'same' : 'opposite';
}

function namesakes({ walks: [first, second] }: PairWalk): number {
  const bare = (name: string): string => name.replace(/^.*\./u, '');
  return first.ends.filter((end, i) => bare(end) === bare(second.ends[i] ?? '')).length;
}

function misfit({ walks: [first, second], stretches, angleSums }: PairWalk): number {
  const notches = stretches.reduce((sum, { lengths: [a, b] }) => sum + Math.abs(a - b), 0);
  const joints =
    first.joints.length === second.joints.length
      ? first.joints.reduce((sum, at, i) => sum + Math.abs(at - (second.joints[i] ?? NaN)), 0)
      : 0;
  const corners = angleSums.reduce((sum, angle) => sum + Math.abs(angle - 180), 0);
  return notches + joints + DEGREE * corners;
}

function stretchesOf(first: Walk, second: Walk): readonly Stretch[] {
  const matched = first.notches.length === second.notches.length ? first.notches : [];
  const stops = [
    { name: first.ends[0], at: [0, 0] as const },
    ...matched.map((notch, i) => ({
      name: `${notch.piece}.${notch.name}`,
      at: [notch.at, second.notches[i]?.at ?? NaN] as const,
    })),
    { name: first.ends[1], at: [first.length, second.length] as const },
  ];
  return stops.slice(1).map(({ name, at }, i) => {
    const before = stops[i];
    return {
      from: before?.name ?? '',
      to: name,
      lengths: [at[0] - (before?.at[0] ?? 0), at[1] - (before?.at[1] ?? 0)],
    };
  });
}
