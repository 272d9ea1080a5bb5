/**
 * Pieces that are not cut on the fold, moved away from it: what lies along a fold is taken to be cut
 * on it, and comes out twice as wide.
 */
import { SAME_PLACE } from '../tolerance';
import { blocked } from './profile';
import type { Placed } from './fill';

/** mm from the fold to a piece that is not on it: room for the shears. Common practice, no source. */
export const OFF_THE_FOLD = 10;

/**
 * The same fill of one flap of which `width` mm can be cut, as long as before. Where a piece lies
 * too near the fold, all that can move toward the selvages do; one that has no room stays.
 */
export function offTheFold(placed: readonly Placed[], width: number): readonly Placed[] {
  const isNear = ({ x, shape }: Placed): boolean => !shape.onFold && x < OFF_THE_FOLD - SAME_PLACE;
  if (!placed.some(isNear)) return placed;
  const lay = [...placed];
  const waiting = new Set(lay.keys());
  for (let moved = true; moved;) {
    moved = false;
    for (const i of waiting) {
      const own = lay[i];
      if (own === undefined || own.shape.onFold) continue;
      const next = { ...own, x: own.x + OFF_THE_FOLD };
      const others = lay.filter((_, k) => k !== i);
      if (next.x + own.position.profile.width > width + SAME_PLACE) continue;
      if (others.some((other) => overlaps(other, next))) continue;
      lay[i] = next;
      waiting.delete(i);
      moved = true;
    }
  }
  return lay;
}

function overlaps(a: Placed, b: Placed): boolean {
  const span = blocked(a.position.profile, b.position.profile, b.x - a.x);
  if (span === undefined) return false;
  return b.y > a.y + span.from + SAME_PLACE && b.y < a.y + span.to - SAME_PLACE;
}
