/** What a changed formula of a drafted block would do to the rules that are derived from it. */
import type { Point } from '../geometry/point';
import type { Axis } from '../rule-sheet/rule-sheet';
import type { RuledPoint } from './regrade';

/** A point that moves otherwise, and by how much in mm, one a size. */
export interface FollowingPoint {
  readonly at: RuledPoint;
  readonly by: readonly Point[];
}

/**
 * The points that would move otherwise if one coordinate's formula moved by `change` of what it does, in
 * mm from the base: the point itself and all that are drawn from it. None where the point has no formula of its own, or
 * nothing could be drafted then.
 */
export type Redraft = (
  at: RuledPoint,
  axis: Axis,
  change: (move: number, size: number) => number,
) => readonly FollowingPoint[];
