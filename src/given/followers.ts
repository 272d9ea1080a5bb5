/** What the points of a piece move with that have no rule of their own and lie on no edge. */
import type { Point } from '../geometry/point';
import { distance } from '../geometry/point';
import { nearestEdgePlace } from '../pattern/edge-place';
import type { Follower, ClosedPath } from '../pattern/pattern';
import type { Edge, Piece } from '../pattern/piece';
import type { RawPoint } from './raw-point';
import type { Span } from './spans';

/** Handles stand between the ends of their edge by their share of the way over both handles. */
export function handleFollowers(
  spans: readonly Span[],
  at: (raw: RawPoint) => number,
): readonly Follower[] {
  return spans.flatMap(({ from, to, by }) => {
    if (by.kind !== 'handles') return [];
    const first = distance(from.at, by.leave.at);
    const second = first + distance(by.leave.at, by.arrive.at);
    const whole = second + distance(by.arrive.at, to.at);
    const ends = { from: at(from), to: at(to) };
    return [
      { ...ends, point: at(by.leave), share: whole === 0 ? 0 : first / whole },
      { ...ends, point: at(by.arrive), share: whole === 0 ? 0 : second / whole },
    ];
  });
}

/**
 * What lies beside a closed line moves with the point of it that is nearest; a grainline as a whole,
 * so that it never turns.
 */
export function besideFollowers(
  beside: readonly RawPoint[],
  at: (raw: RawPoint) => number,
  places: readonly Point[],
  { stops }: ClosedPath,
): readonly Follower[] {
  const grain = beside.find(({ kind }) => kind === 'grain');
  return beside.flatMap((raw) => {
    const from = raw.kind === 'grain' ? (grain ?? raw) : raw;
    const away = (point: number): number => distance(from.at, places[point] ?? from.at);
    const [first] = stops;
    if (first === undefined) return [];
    const { point: nearest } = stops.reduce(
      (a, b) => (away(b.point) < away(a.point) ? b : a),
      first,
    );
    return [{ point: at(raw), from: nearest, to: nearest, share: 0 }];
  });
}

/**
 * A notch that is no point of a line moves between the two points of it that it stands between, by its
 * share of the way, and so stays on a straight edge. `lines` are those on which it may stand; of
 * equally near ones the first counts.
 */
export function notchFollowers(
  notches: readonly RawPoint[],
  at: (raw: RawPoint) => number,
  base: Piece,
  lines: readonly (readonly Edge[])[],
): readonly Follower[] {
  const { index } = base.plan;
  return notches.flatMap((raw) => {
    const places = lines.flatMap((line) => nearestEdgePlace(base, line, raw.at) ?? []);
    const [first, ...more] = places;
    if (first === undefined) return [];
    const { from, to, share } = more.reduce((a, b) => (b.away < a.away ? b : a), first);
    return [{ point: at(raw), from: index.get(from) ?? -1, to: index.get(to) ?? -1, share }];
  });
}
