/** The side seam: what it takes in from hip to waist, and how it turns at the hip. */
import { angleBetween, subtract } from '../geometry/point';
import { segmentTangent } from '../geometry/segment';
import type { GradedRange } from '../grade/graded-pattern';
import type { Piece } from '../pattern/piece';
import { edgeSegments, panelsOf, pointOf } from '../pattern/piece';
import { CORNER_SEEN, SAME_PLACE } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength, trimmed } from '../units';
import type { Finding } from './finding';

/** A side that takes nothing in leans outward at the waist, and the darts lie. */
export function checkSideTakeUp(range: GradedRange, display: LengthDisplay): Finding[] {
  return range.sizes.flatMap((size) =>
    panelsOf(size.pieces).map((piece): Finding => {
      const measured = pointOf(piece, 'side_hip').x - pointOf(piece, 'side_waist').x;
      const held = measured >= -SAME_PLACE;
      return {
        severity: held ? 'ok' : 'fail',
        check: 'side-take-up',
        size: size.label,
        piece: piece.plan.name,
        subject: 'side',
        quantity: 'length',
        measured,
        expected: 0,
        source: "the engine's own rule: the hip is the widest place",
        message: held
          ? `the side takes in ${showLength(measured, display)} from hip to waist`
          : `the side leans ${showLength(-measured, display)} outward at the waist: ` +
            'hip minus waist is too small for this dart, make the dart narrower',
      };
    }),
  );
}

/** The corner where the taper begins, stated once for each piece over the whole range. */
export function noteHipCorner(range: GradedRange): Finding[] {
  return range.plans.flatMap((plan, p): Finding[] => {
    if (plan.part !== 'panel') return [];
    const angles = range.sizes.map(({ pieces }) => hipCorner(pieces[p] as Piece));
    const [least, most] = [Math.min(...angles), Math.max(...angles)];
    if (!(most > CORNER_SEEN)) return [];
    const span =
      trimmed(least, 1) === trimmed(most, 1)
        ? trimmed(most, 1)
        : `${trimmed(least, 1)} to ${trimmed(most, 1)}`;
    return [
      {
        severity: 'note',
        check: 'hip-corner',
        size: '',
        piece: plan.name,
        subject: 'side_hip',
        quantity: 'angle',
        measured: most,
        expected: 0,
        source: 'common practice, no source: the taper starts at the hip line',
        message: `the side seam turns by ${span} degrees at the hip line, where the taper begins`,
      },
    ];
  });
}

function hipCorner(piece: Piece): number {
  const side = piece.plan.outline.filter((edge) => edge.seam === 'side');
  const above = side.find((edge) => edge.to === 'side_hip');
  const below = side.find((edge) => edge.from === 'side_hip');
  if (above === undefined || below === undefined) return 0;
  const arriving = edgeSegments(piece, above).at(-1);
  const leaving = edgeSegments(piece, below)[0];
  if (arriving === undefined || leaving === undefined) return 0;
  return angleBetween(segmentTangent(arriving, 1), subtract(leaving.to, leaving.from));
}
