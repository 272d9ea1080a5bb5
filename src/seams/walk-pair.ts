/** Both sides of a seam walked along each other. */
import type { EasedStretch, SeamPair } from '../pattern/seam-pair';
import { easeOf } from '../pattern/seam-pair';
import type { Piece } from '../pattern/piece';
import type { Walk, WalkedNotch } from './seam-walk';
import { walkSide, walkedBack } from './seam-walk';

/** A stretch between two places that meet: ends of the seam, or notches. */
export interface Stretch {
  readonly from: string;
  readonly to: string;
  /** The places of the second side that meet them. */
  readonly meets: readonly [from: string, to: string];
  /** All names of the places at its ends: a join is a point of both its edges. */
  readonly names: readonly [from: readonly string[], to: readonly string[]];
  /** mm on the first side, and on the second. */
  readonly lengths: readonly [number, number];
  /** mm by which the first side is meant to be longer here; undefined where only the whole seam has ease. */
  readonly ease: number | undefined;
}

/** What walking a pair tells: how the lengths differ, and where. */
export interface PairWalk {
  readonly pair: SeamPair;
  readonly walks: readonly [Walk, Walk];
  /** mm by which the first side is meant to be longer. */
  readonly ease: number;
  /** mm by which the first side is longer than the second and its ease. */
  readonly gap: number;
  /** From one place that meets to the next; a single stretch where the places cannot be matched. */
  readonly stretches: readonly Stretch[];
  /** Whether the places of one side can be matched with those of the other. */
  readonly isMatched: boolean;
  /** Sums in degrees of the corners that meet at the start and at the end. */
  readonly angleSums: readonly [number, number];
}

/** How two sides run along each other, decided once from the base. */
export type Way = 'same' | 'opposite';

const NO_PARAMETERS: ReadonlyMap<string, number> = new Map();

/** Walks a pair in one size, whose `parameters` may hold its ease. */
export function walkPair(
  pieces: readonly Piece[],
  pair: SeamPair,
  way: Way,
  parameters = NO_PARAMETERS,
): PairWalk {
  const first = walkSide(pieces, pair.sides[0]);
  const other = walkSide(pieces, pair.sides[1]);
  const second = way === 'same' ? other : walkedBack(other);
  const ease = easeOf(pair, parameters);
  const meeting = pair.notches === 'met' ? meetingPlaces(first, second) : NOTHING;
  return {
    pair,
    walks: [first, second],
    ease,
    gap: first.length - second.length - ease,
    stretches: stretchesOf(first, second, meeting ?? NOTHING, pair.eased ?? []),
    isMatched: meeting !== undefined,
    angleSums: [first.angles[0] + second.angles[0], first.angles[1] + second.angles[1]],
  };
}

/** Nothing of either side meets. */
const NOTHING: readonly [readonly WalkedNotch[], readonly WalkedNotch[]] = [[], []];

/** What may stand for a place that meets another, from what is marked to what can be seen. */
const SEEN: readonly ((walk: Walk) => readonly WalkedNotch[])[] = [
  ({ notches }) => notches,
  ({ notches, joins }) => inOrder([...notches, ...joins]),
  ({ notches, darts }) => inOrder([...notches, ...darts]),
  ({ notches, joins, darts }) => inOrder([...notches, ...joins, ...darts]),
];

function inOrder(places: readonly WalkedNotch[]): readonly WalkedNotch[] {
  return places.toSorted((a, b) => a.at - b.at);
}

/**
 * The places of both sides that meet. Where their notches differ in number, a join of edges or a dart
 * on one side may be what a notch on the other meets, as the shoulder seam does at the crown of a
 * sleeve. Undefined where nothing makes the numbers equal.
 */
function meetingPlaces(
  first: Walk,
  second: Walk,
): readonly [readonly WalkedNotch[], readonly WalkedNotch[]] | undefined {
  for (const one of SEEN)
    for (const other of SEEN) {
      const [a, b] = [one(first), other(second)];
      if (a.length === b.length && (one === other || a.length > 0)) return [a, b];
    }
  return undefined;
}

function stretchesOf(
  first: Walk,
  second: Walk,
  [own, others]: readonly [readonly WalkedNotch[], readonly WalkedNotch[]],
  eased: readonly EasedStretch[],
): readonly Stretch[] {
  const namesOf = ({ piece, name, endOf }: WalkedNotch): readonly string[] =>
    endOf === undefined ? [`${piece}.${name}`] : [`${piece}.${name}`, endOf];
  const stops: readonly Stop[] = [
    { own: [first.ends[0]], other: [second.ends[0]], at: [0, 0] },
    ...own.map((place, i): Stop => {
      const other = others[i];
      return {
        own: namesOf(place),
        other: other === undefined ? [] : namesOf(other),
        at: [place.at, other?.at ?? NaN],
      };
    }),
    { own: [first.ends[1]], other: [second.ends[1]], at: [first.length, second.length] },
  ];
  return stops.slice(1).flatMap((stop, i): Stretch | [] => {
    const before = stops[i];
    if (before === undefined) return [];
    const names = [
      [...before.own, ...before.other],
      [...stop.own, ...stop.other],
    ] as const;
    const between = eased.find((stated) => isBetween(stated, names));
    return {
      from: before.own[0] ?? '',
      to: stop.own[0] ?? '',
      meets: [before.other[0] ?? '', stop.other[0] ?? ''],
      names,
      lengths: [stop.at[0] - before.at[0], stop.at[1] - before.at[1]],
      ease: between?.ease,
    };
  });
}

/** A place at which both sides meet: its names on each, and how far along each it lies. */
interface Stop {
  readonly own: readonly string[];
  readonly other: readonly string[];
  readonly at: readonly [number, number];
}

/** Whether a stated stretch is the one between these places, told from either end. */
export function isBetween(
  { from, to }: Pick<EasedStretch, 'from' | 'to'>,
  [start, end]: Stretch['names'],
): boolean {
  return (start.includes(from) && end.includes(to)) || (start.includes(to) && end.includes(from));
}
