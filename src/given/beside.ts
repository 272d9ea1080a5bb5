/** The points with rules that stand beside a point: its moves are likely to be like theirs. */
import type { PatternPiece } from '../pattern/pattern';

/**
 * The ruled points before and after a point on the outline or cut line of its piece; for a handle the
 * ends of its edge, as far as they have rules. None for a point that is on no line.
 */
export function besidePoints(
  { path, cutPath, followers }: PatternPiece,
  ruled: { has: (point: number) => boolean } | undefined,
  point: number,
): readonly number[] {
  for (const line of [path, cutPath]) {
    const stops = (line?.stops ?? []).filter((stop) => ruled?.has(stop.point));
    const at = stops.findIndex((stop) => stop.point === point);
    if (at < 0) continue;
    return [stops.at(at - 1), stops[(at + 1) % stops.length]].flatMap((stop) => stop?.point ?? []);
  }
  const own = followers.find((follower) => follower.point === point);
  if (own === undefined || own.from === own.to) return [];
  return [own.from, own.to].filter((end) => ruled?.has(end));
}
