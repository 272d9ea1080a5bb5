/** Shaped facings: of one depth all along. That they lie on the waist, its seams tell. */
import { distanceToCubic } from '../geometry/nearest';
import { segmentAt } from '../geometry/segment';
import type { GradedPattern, SizedPattern } from '../grade/graded-pattern';
import type { Piece } from '../pattern/piece';
import { edgeSegments } from '../pattern/piece';
import { FACING_DEPTH } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { shopLength } from '../pattern/shop-length';
import type { Finding } from './finding';
import { found } from './finding';

/** Places at which the depth is measured along each curve of the lower edge. */
const PLACES = 8;

/** One finding for each facing of each size. */
export function checkFacings(range: GradedPattern, display: LengthDisplay): Finding[] {
  const step = range.roundingStep ?? 0;
  return range.sizes.flatMap((size) =>
    size.pieces
      .filter(({ plan }) => plan.part === 'facing')
      .map((facing) => depth(size, facing, FACING_DEPTH + Math.SQRT2 * step, display)),
  );
}

/** The lower edge lies one depth below the upper one all along. */
function depth(
  size: SizedPattern,
  facing: Piece,
  tolerance: number,
  display: LengthDisplay,
): Finding {
  const expected = size.parameters.get('facing_depth') ?? NaN;
  const curves = (seam: string) =>
    facing.plan.outline
      .filter((edge) => edge.seam === seam)
      .flatMap((edge) => edgeSegments(facing, edge))
      .filter((segment) => segment.kind === 'cubic');
  const waist = curves('waist');
  const depths = curves('facing_edge').flatMap((curve) =>
    Array.from({ length: PLACES + 1 }, (_, k) => {
      const p = segmentAt(curve, k / PLACES);
      return Math.min(...waist.map((upper) => distanceToCubic(upper, p)));
    }),
  );
  const measured = depths.reduce(
    (worst, one) => (Math.abs(one - expected) > Math.abs(worst - expected) ? one : worst),
    expected,
  );
  return found({
    severity: Math.abs(measured - expected) <= tolerance ? 'ok' : 'warning',
    check: 'facing-depth',
    size: size.label,
    piece: facing.plan.name,
    subject: 'facing_edge',
    measured,
    expected,
    tolerance,
    source: "the engine's own rule: the lower edge is parallel to the waist",
    message:
      `where it is farthest from ${shopLength(expected, display)}, ` +
      `the facing is ${showLength(measured, display)} deep`,
  });
}
