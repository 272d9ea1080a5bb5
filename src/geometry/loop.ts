/** Closed loops of segments: what they enclose, and how long they are. */
import { cross } from './point';
import type { Segment } from './segment';
import { segmentLength } from './segment';

/**
 * Square mm inside a loop that ends where it begins, exact for lines and cubics (Green's theorem);
 * positive where it runs clockwise on paper, y down.
 */
export function loopArea(loop: readonly Segment[]): number {
  return loop.reduce((sum, segment) => {
    const { from, to } = segment;
    if (segment.kind === 'line') return sum + cross(from, to) / 2;
    const { leave, arrive } = segment;
    return (
      sum +
      (6 * (cross(from, leave) + cross(arrive, to)) +
        3 * (cross(from, arrive) + cross(leave, arrive) + cross(leave, to)) +
        cross(from, to)) /
        20
    );
  }, 0);
}

/** mm along the segments. */
export function loopLength(loop: readonly Segment[]): number {
  return loop.reduce((sum, segment) => sum + segmentLength(segment), 0);
}
