/** A panel with its darts closed on paper: what is beyond each dart turned about the dart's tip. */
import type { Point } from '../../geometry/point';
import { add, cross, dot, length, point, subtract } from '../../geometry/point';
import type { Cubic } from '../../geometry/segment';
import type { Edge, Piece } from '../../pattern/piece';
import { pointOf } from '../../pattern/piece';

/** The upper part of a panel as it is sewn, laid flat; the center line has not moved. */
export interface ClosedPanel {
  /**
   * The waist edge from center to side, a curve for each stretch between darts. Each starts where
   * the one before ends, if the legs of the dart between them are equal.
   */
  readonly waist: readonly Cubic[];
  /** The side seam from the waist down to the hip line. */
  readonly side: Cubic;
}

type Move = (p: Point) => Point;

/**
 * Closes every dart of a half panel whose outline runs from the center along the waist to the side.
 * The parts between the darts are moved, not bent, so that all lengths stay exact.
 */
export function closeDarts(panel: Piece): ClosedPanel {
  const waist: Cubic[] = [];
  let moved: Move = (p) => p;
  for (const edge of panel.plan.outline) {
    if (edge.kind === 'dart') {
      const turned = turning(panel, edge);
      const before = moved;
      moved = (p) => before(turned(p));
    } else if (edge.kind === 'cubic') {
      const curve = movedCubic(panel, edge, moved);
      if (edge.seam === 'side') return { waist, side: curve };
      waist.push(curve);
    }
  }
  throw new RangeError(`${panel.plan.name} has no curve at the side`);
}

/** The turn about a dart's tip that lays its outer leg on its inner one. */
function turning(panel: Piece, dart: Edge & { readonly kind: 'dart' }): Move {
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

function movedCubic(panel: Piece, edge: Edge & { readonly kind: 'cubic' }, move: Move): Cubic {
  const at = (name: string): Point => move(pointOf(panel, name));
  return {
    kind: 'cubic',
    from: at(edge.from),
    leave: at(edge.leave),
    arrive: at(edge.arrive),
    to: at(edge.to),
  };
}
