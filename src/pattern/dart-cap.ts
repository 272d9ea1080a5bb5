/** The cap of a dart: how far the cloth must reach between its legs to be caught in the seam. */
import type { Point } from '../geometry/point';
import { add, between, cross, mirroredIn, point, scale, subtract, unit } from '../geometry/point';
import { segmentTangent } from '../geometry/segment';
import type { DartEdge, Piece } from './piece';
import { edgeSegments, pointOf } from './piece';

/**
 * Where the fold of a dart pressed toward the center or the side meets the cut edge: the waist edge
 * beyond the leg on that side, mirrored in the leg, as far as the dart's axis. Source: Government
 * of India, CITS Dress Making, fold in the pressing direction and cut along the waist line.
 */
export function dartCap(panel: Piece, dart: DartEdge, pressed: 'center' | 'side'): Point {
  const tip = pointOf(panel, dart.tip);
  const [inner, outer] = [pointOf(panel, dart.from), pointOf(panel, dart.to)];
  const leg = pressed === 'center' ? inner : outer;
  const along = mirroredIn(
    edgeDirection(panel, dart, pressed),
    point(0, 0),
    unit(subtract(tip, leg)),
  );
  const axis = subtract(between(inner, outer, 0.5), tip);
  return add(leg, scale(along, cross(subtract(tip, leg), axis) / cross(along, axis)));
}

/** The direction in which the waist edge leaves the dart, toward the center or toward the side. */
function edgeDirection(panel: Piece, dart: DartEdge, pressed: 'center' | 'side'): Point {
  const { outline } = panel.plan;
  const beside = outline.find((edge) =>
    pressed === 'center' ? edge.to === dart.from : edge.from === dart.to,
  );
  const segment = beside && edgeSegments(panel, beside)[0];
  if (segment === undefined) throw new RangeError(`no edge beside ${dart.name}`);
  return pressed === 'center' ? scale(segmentTangent(segment, 1), -1) : segmentTangent(segment, 0);
}
