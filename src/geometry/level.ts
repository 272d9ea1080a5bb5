/** Where an outline crosses a level: a horizontal line at a given depth. */
import { turnsAlong } from './bounds';
import { cubicAt } from './cubic';
import type { Cubic, Segment } from './segment';
import { BISECTED, SAME_PLACE } from '../tolerance';

/**
 * The x of every place where the segments meet the level `y`; a line that runs along the level
 * gives both its ends, and a corner on the level is given once for each segment that meets it.
 */
export function crossingsAtLevel(segments: readonly Segment[], y: number): readonly number[] {
  const found: number[] = [];
  for (const segment of segments) {
    const places =
      segment.kind === 'line'
        ? lineCrossings(segment.from, segment.to, y)
        : cubicCrossings(segment, y);
    for (const x of places) found.push(x);
  }
  return found;
}

function lineCrossings(
  from: { x: number; y: number },
  to: { x: number; y: number },
  y: number,
): readonly number[] {
  const above = Math.abs(from.y - y) <= SAME_PLACE;
  const below = Math.abs(to.y - y) <= SAME_PLACE;
  if (above && below) return [from.x, to.x];
  if (above) return [from.x];
  if (below) return [to.x];
  if ((from.y - y) * (to.y - y) > 0) return [];
  return [from.x + ((y - from.y) / (to.y - from.y)) * (to.x - from.x)];
}

function cubicCrossings(cubic: Cubic, y: number): readonly number[] {
  const { from, leave, arrive, to } = cubic;
  // A cubic stays within the span of its control points, so most levels miss it altogether.
  const highest = Math.min(from.y, leave.y, arrive.y, to.y) - SAME_PLACE;
  const lowest = Math.max(from.y, leave.y, arrive.y, to.y) + SAME_PLACE;
  if (y < highest || y > lowest) return [];
  const found: number[] = [];
  if (Math.abs(from.y - y) <= SAME_PLACE) found.push(from.x);
  if (Math.abs(to.y - y) <= SAME_PLACE) found.push(to.x);
  if (y <= highest + 2 * SAME_PLACE || y >= lowest - 2 * SAME_PLACE) return found;
  const offset = (t: number): number => cubicAt(cubic, t).y - y;
  // Between the places where it turns round in y it crosses the level once at most.
  const turns = turnsAlong(from.y, leave.y, arrive.y, to.y).sort((a, b) => a - b);
  let end = 0;
  for (const next of [...turns, 1]) {
    let low = end;
    let high = next;
    end = next;
    const start = offset(low);
    if (start === 0 && low > 0) found.push(cubicAt(cubic, low).x);
    if (start * offset(high) >= 0) continue;
    while (high - low > BISECTED) {
      const middle = (low + high) / 2;
      if (middle === low || middle === high) break;
      if (offset(middle) * start > 0) low = middle;
      else high = middle;
    }
    found.push(cubicAt(cubic, low).x);
  }
  return found;
}
