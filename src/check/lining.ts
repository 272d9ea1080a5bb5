/** The lining: its side seams match, its waist is the shell's, and it has the room it should. */
import type { GradedRange, GradedSize } from '../grade/graded-range';
import { hipWidth } from '../measure/finished';
import type { Piece } from '../pattern/piece';
import { panelsOf, seamLength } from '../pattern/piece';
import { MEETS_TARGET, SEAM_MATCH } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { seamSeverity } from './seams-match';

const COMMON_PRACTICE = 'common practice, no source';

/**
 * Findings for the lining of each size, none where a style has no lining. A lining narrower than
 * the shell fails, one with less room than asked for warns.
 */
export function checkLining(range: GradedRange, display: LengthDisplay): Finding[] {
  const step = range.roundingStep ?? 0;
  return range.sizes.flatMap((size) => {
    const linings = size.pieces.filter(({ plan }) => plan.part === 'lining');
    const [front, back] = linings;
    if (front === undefined || back === undefined) return [];
    return [
      matching(size, 'side', [front, back], display),
      ...panelsOf(size.pieces).flatMap((panel) =>
        linings
          .filter(({ plan }) => plan.name === `${panel.plan.name}_lining`)
          .flatMap((lining) => [
            matching(size, 'waist', [lining, panel], display),
            hipRoom(size, lining, panel, MEETS_TARGET + step, display),
          ]),
      ),
    ];
  });
}

function matching(
  size: GradedSize,
  seam: string,
  [piece, other]: readonly [Piece, Piece],
  display: LengthDisplay,
): Finding {
  const [measured, expected] = [seamLength(piece, seam), seamLength(other, seam)];
  return {
    severity: seamSeverity(Math.abs(measured - expected)),
    check: 'lining-seams',
    size: size.label,
    piece: `${piece.plan.name}, ${other.plan.name}`,
    subject: seam,
    quantity: 'length',
    measured,
    expected,
    tolerance: SEAM_MATCH,
    source: `${COMMON_PRACTICE}: every seam pair walked in every size`,
    message:
      `the ${seam} of ${piece.plan.name} is ${showLength(measured, display)}, ` +
      `that of ${other.plan.name} ${showLength(expected, display)}`,
  };
}

/** Lining does not give when its wearer sits, so it must not be narrower than the shell. */
function hipRoom(
  size: GradedSize,
  lining: Piece,
  panel: Piece,
  tolerance: number,
  display: LengthDisplay,
): Finding {
  const measured = hipWidth(lining) - hipWidth(panel);
  const expected = size.parameters.get('lining_hip_room') ?? NaN;
  return {
    severity: measured >= expected - tolerance ? 'ok' : measured >= -tolerance ? 'warning' : 'fail',
    check: 'lining-hip',
    size: size.label,
    piece: lining.plan.name,
    subject: 'side_hip',
    quantity: 'length',
    measured,
    expected,
    tolerance,
    source: `${COMMON_PRACTICE}: the lining is 1/8 in wider at the hip on each panel side`,
    message:
      `at the hip line the lining is ${showLength(Math.abs(measured), display)} ` +
      `${measured < 0 ? 'narrower' : 'wider'} than its panel, ` +
      `${showLength(expected, display)} of room is wanted`,
  };
}
