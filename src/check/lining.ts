/** The lining has the room that it should. That its seams meet the shell's, the walk of seams tells. */
import type { GradedPattern, SizedPattern } from '../grade/graded-pattern';
import type { Piece } from '../pattern/piece';
import { panelsOf, pointOf } from '../pattern/piece';
import { widthAt } from '../pattern/width';
import { MEETS_TARGET } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { shopLength } from '../pattern/shop-length';
import type { Finding } from './finding';
import { found } from './finding';

const COMMON_PRACTICE = 'common practice, no source';

/** One finding for each lining piece of each size. */
export function checkLining(range: GradedPattern, display: LengthDisplay): Finding[] {
  const step = range.roundingStep ?? 0;
  return range.sizes.flatMap((size) =>
    panelsOf(size.pieces).flatMap((panel) =>
      size.pieces
        .filter(({ plan }) => plan.name.endsWith(`${panel.plan.name}_lining`))
        .map((lining) => hipRoom(size, lining, panel, MEETS_TARGET + step, display)),
    ),
  );
}

function hipWidth(piece: Piece): number {
  return widthAt(piece, pointOf(piece, 'center_hip').y);
}

/** Lining does not give when its wearer sits, so it must not be narrower than the shell. */
function hipRoom(
  size: SizedPattern,
  lining: Piece,
  panel: Piece,
  tolerance: number,
  display: LengthDisplay,
): Finding {
  const measured = hipWidth(lining) - hipWidth(panel);
  const expected = size.parameters.get('lining_hip_room') ?? NaN;
  return found({
    severity: measured >= expected - tolerance ? 'ok' : measured >= -tolerance ? 'warning' : 'fail',
    check: 'lining-hip',
    size: size.label,
    piece: lining.plan.name,
    subject: 'side_hip',
    measured,
    expected,
    tolerance,
    source: `${COMMON_PRACTICE}: the lining is 1/8 in wider at the hip on each panel side`,
    message:
      `at the hip line the lining is ${showLength(Math.abs(measured), display)} ` +
      `${measured < 0 ? 'narrower' : 'wider'} than its panel, ` +
      `${shopLength(expected, display)} of room is wanted`,
  });
}
