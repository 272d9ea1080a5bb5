/** The straight waistband against the skirt edge that is eased into it. */
import type { GradedRange, GradedSize } from '../grade/graded-range';
import { measureOf } from '../grade/graded-range';
import type { Piece } from '../pattern/piece';
import { pieceNamed, seamLength } from '../pattern/piece';
import { seamStretches, waistStretches } from '../pattern/stretches';
import { MEETS_TARGET } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';

const EASED =
  'extension bulletin CT-MMB.186, Waistline treatments: the skirt is eased onto the band';

/** Rounded ends that a whole waist and its band have: four sides and the end of the band. */
const ENDS = 5;

/**
 * Findings for the band of each size, none where a style has no band; wrong lengths fail. Rounded
 * rules are allowed their step.
 */
export function checkWaistband(range: GradedRange, display: LengthDisplay): Finding[] {
  const step = range.roundingStep ?? 0;
  return range.sizes.flatMap((size) =>
    size.pieces
      .filter(({ plan }) => plan.part === 'waistband')
      .flatMap((band) => [
        bandLength(size, band, MEETS_TARGET + (ENDS * step) / 2, display),
        // Both ends of a stretch may be rounded, on the band and on the skirt.
        notches(size, band, MEETS_TARGET + 2 * step, display),
      ]),
  );
}

/** The cut band without its underlap and with its ease is the sewn skirt edge. */
function bandLength(
  size: GradedSize,
  band: Piece,
  tolerance: number,
  display: LengthDisplay,
): Finding {
  const cut = seamLength(band, 'inside_edge');
  const ease = size.parameters.get('band_ease') ?? NaN;
  const measured = cut - seamLength(band, 'underlap') + ease;
  const expected = measureOf(size, 'waist');
  return {
    severity: Math.abs(measured - expected) <= tolerance ? 'ok' : 'fail',
    check: 'waistband-length',
    size: size.label,
    piece: band.plan.name,
    subject: 'waist',
    quantity: 'length',
    measured,
    expected,
    tolerance,
    source: EASED,
    message:
      `the band is cut ${showLength(cut, display)} long; without its underlap and with ` +
      `${showLength(ease, display)} of ease it holds ${showLength(measured, display)}, ` +
      `the skirt edge is ${showLength(expected, display)}`,
  };
}

/** Walked from notch to notch, every stretch of the band is the same share of the skirt edge. */
function notches(
  size: GradedSize,
  band: Piece,
  tolerance: number,
  display: LengthDisplay,
): Finding {
  const own = seamStretches(band, 'waist');
  const edge = waistStretches(pieceNamed(size.pieces, 'front'), pieceNamed(size.pieces, 'back'));
  const sum = (lengths: readonly number[]): number => lengths.reduce((all, one) => all + one, 0);
  const share = sum(own) / sum(edge);
  const gaps = edge.map((stretch, i) => Math.abs(share * stretch - (own[i] ?? NaN)));
  const measured = Math.max(...gaps);
  const held = own.length === edge.length && measured <= tolerance;
  return {
    severity: held ? 'ok' : 'fail',
    check: 'waistband-notches',
    size: size.label,
    piece: band.plan.name,
    subject: 'waist',
    quantity: 'length',
    measured,
    expected: 0,
    tolerance,
    source: 'common practice, no source: seams are walked from notch to notch, ease spread evenly',
    message: held
      ? 'the notches of the band meet centers, darts and side seams'
      : `a notch of the band is ${showLength(measured, display)} off its seam or dart`,
  };
}
