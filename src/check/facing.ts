/** Shaped facings: as long as the closed waist they lie on, of one depth, and matching at the side. */
import { distanceToCubic } from '../geometry/nearest';
import { segmentAt } from '../geometry/segment';
import type { GradedRange, GradedSize } from '../grade/graded-range';
import { cornerAngle } from '../measure/corner';
import type { Piece } from '../pattern/piece';
import { edgeSegments, panelsOf, seamLength } from '../pattern/piece';
import { seamStretches } from '../pattern/stretches';
import { FACING_DEPTH, MEETS_TARGET, SEAM_MATCH, SQUARE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, trimmed } from '../units';
import type { Finding } from './finding';
import { seamSeverity } from './seams-match';

const COMMON_PRACTICE = 'common practice, no source';

/** Places at which the depth is measured along each curve of the lower edge. */
const PLACES = 8;

/**
 * Findings for the facings of each size, none where a style has no facing. An upper edge of another
 * length fails, depth and the line across the side warn; rounded rules are allowed their step.
 */
export function checkFacings(range: GradedRange, display: LengthDisplay): Finding[] {
  const step = range.roundingStep ?? 0;
  return range.sizes.flatMap((size) => {
    const facings = size.pieces.filter(({ plan }) => plan.part === 'facing');
    const [front, back] = facings;
    return [
      ...panelsOf(size.pieces).flatMap((panel) =>
        facings
          .filter(({ plan }) => plan.name === `${panel.plan.name}_facing`)
          // Both ends of a stretch may be rounded, on the facing and on the panel.
          .map((facing) => upperEdge(size, facing, panel, MEETS_TARGET + 2 * step, display)),
      ),
      ...facings.map((facing) => depth(size, facing, FACING_DEPTH + Math.SQRT2 * step, display)),
      ...(front === undefined || back === undefined
        ? []
        : [
            sides(size, front, back, display),
            straight(size, front, back, 'side_waist'),
            straight(size, front, back, 'side_lower'),
          ]),
    ];
  });
}

function upperEdge(
  size: GradedSize,
  facing: Piece,
  panel: Piece,
  tolerance: number,
  display: LengthDisplay,
): Finding {
  const own = seamStretches(facing, 'waist');
  const waist = seamStretches(panel, 'waist');
  const gaps = waist.map((stretch, i) => Math.abs(stretch - (own[i] ?? NaN)));
  const [measured, expected] = [seamLength(facing, 'waist'), seamLength(panel, 'waist')];
  const held = own.length === waist.length && Math.max(...gaps) <= tolerance;
  return {
    severity: held ? 'ok' : 'fail',
    check: 'facing-waist',
    size: size.label,
    piece: facing.plan.name,
    subject: 'waist',
    quantity: 'length',
    measured,
    expected,
    tolerance,
    source: `${COMMON_PRACTICE}: darts are closed out of the facing`,
    message:
      `the facing's upper edge is ${showLength(measured, display)}, ` +
      `the waist edge with its darts closed ${showLength(expected, display)}`,
  };
}

/** The lower edge lies one depth below the upper one all along. */
function depth(
  size: GradedSize,
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
  return {
    severity: Math.abs(measured - expected) <= tolerance ? 'ok' : 'warning',
    check: 'facing-depth',
    size: size.label,
    piece: facing.plan.name,
    subject: 'facing_edge',
    quantity: 'length',
    measured,
    expected,
    tolerance,
    source: "the engine's own rule: the lower edge is parallel to the waist",
    message:
      `where it is farthest from ${showLength(expected, display)}, ` +
      `the facing is ${showLength(measured, display)} deep`,
  };
}

function sides(size: GradedSize, front: Piece, back: Piece, display: LengthDisplay): Finding {
  const [measured, expected] = [seamLength(front, 'side'), seamLength(back, 'side')];
  return {
    severity: seamSeverity(Math.abs(measured - expected)),
    check: 'facing-sides',
    size: size.label,
    piece: `${front.plan.name}, ${back.plan.name}`,
    subject: 'side',
    quantity: 'length',
    measured,
    expected,
    tolerance: SEAM_MATCH,
    source: `${COMMON_PRACTICE}: every seam pair walked in every size`,
    message:
      `the sides of the facings are ${showLength(measured, display)} in front ` +
      `and ${showLength(expected, display)} in back`,
  };
}

function straight(size: GradedSize, front: Piece, back: Piece, corner: string): Finding {
  const measured = cornerAngle(front, corner) + cornerAngle(back, corner);
  return {
    severity: Math.abs(measured - 180) <= 2 * SQUARE ? 'ok' : 'warning',
    check: 'facing-across-side',
    size: size.label,
    piece: `${front.plan.name}, ${back.plan.name}`,
    subject: corner,
    quantity: 'angle',
    measured,
    expected: 180,
    tolerance: 2 * SQUARE,
    source: `${COMMON_PRACTICE}: the edges run on across the side seam`,
    message: `front and back corners of the facings add up to ${trimmed(measured, 1)} degrees`,
  };
}
