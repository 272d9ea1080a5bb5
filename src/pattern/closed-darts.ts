/** An edge of a panel with its darts closed on paper: what is beyond each is turned about its tip. */
import type { Point } from '../geometry/point';
import { add, cross, dot, length, point, subtract } from '../geometry/point';
import type { Segment } from '../geometry/segment';
import { movedSegment } from '../geometry/segment';
import type { DartEdge, Piece } from './piece';
import { edgeSegments, pointOf } from './piece';

/** The upper part of a panel as it is sewn, laid flat; the center line has not moved. */
export interface ClosedPanel {
  /**
   * The waist edge from center to side, piece by piece between darts and joints. Each starts where
   * the one before ends, if the legs of the dart between them are equal.
   */
  readonly waist: readonly Segment[];
  /** The first edge of the side seam, from the waist down. */
  readonly side: Segment;
}

type Move = (p: Point) => Point;

/**
 * Closes every dart of a half panel whose outline runs from the center along the waist to the side.
 * The parts between the darts are moved, not bent, so that all lengths stay exact. Throws a
 * RangeError for a piece without a side.
 */
export function closeDarts(panel: Piece): ClosedPanel {
  const waist: Segment[] = [];
  let moved: Move = (p) => p;
  for (const edge of panel.plan.outline) {
    if (edge.kind === 'dart') {
      const turned = turning(panel, edge);
      const before = moved;
      moved = (p) => before(turned(p));
      continue;
    }
    const segments = edgeSegments(panel, edge).map((segment) => movedSegment(segment, moved));
    const [side] = segments;
    if (edge.seam === 'side' && side !== undefined) return { waist, side };
    waist.push(...segments);
  }
  throw new RangeError(`${panel.plan.name} has no side`);
}

/** The turn about a dart's tip that lays its outer leg on its inner one. */
function turning(panel: Piece, dart: DartEdge): Move {
  const tip = pointOf(panel, dart.tip);
  const inner = subtract(pointOf(panel, dart.from), tip);
  const outer = subtract(pointOf(panel, dart.to), tip);
  const legs = length(inner) * length(outer);
  const [cos, sin] = [dot(outer, inner) / legs, cross(outer, inner) / legs];
  return (p) => {
    const { x, y } = subtract(p, tip);
    return add(tip, point(cos * x - sin * y, sin * x + cos * y));
  };
}
