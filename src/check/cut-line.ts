/** Cut lines: clear of the sewing line, and as far from it as the allowances say. */
import type { GradedPattern } from '../grade/graded-pattern';
import { crossedSeams, nearestPlace } from '../pattern/allowance-kept';
import { clockwise } from '../pattern/clockwise';
import { hasAllowances } from '../pattern/allowance';
import type { CutPiece } from '../pattern/cut-piece';
import { shopLength } from '../pattern/shop-length';
import { stripsOf } from '../pattern/strip';
import { ALLOWANCE_KEPT } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import type { Finding } from './finding';
import { found } from './finding';

/** One finding for each size of each piece that is cut by its allowances. */
export function checkCutLines({ sizes }: GradedPattern, display: LengthDisplay): Finding[] {
  return sizes.flatMap(({ label, cutPieces = [], parameters }) =>
    cutPieces
      .filter(({ piece: { plan } }) => plan.cutLine === undefined && hasAllowances(plan))
      .map((piece) => checkCutLine(piece, parameters, label, display)),
  );
}

/** The finding for one piece of the size `label`, cut by the allowances in `parameters`. */
function checkCutLine(
  { piece, cut }: CutPiece,
  parameters: ReadonlyMap<string, number>,
  label: string,
  display: LengthDisplay,
): Finding {
  const strips = stripsOf(clockwise(piece), parameters);
  const crossed = crossedSeams(cut, strips);
  const nearest = nearestPlace(cut, strips);
  const { kept, wanted, seam } = nearest ?? { kept: 0, wanted: 0, seam: 'outline' };
  const held = crossed.length === 0 && kept >= wanted - ALLOWANCE_KEPT;
  return found({
    severity: held ? 'ok' : 'fail',
    check: 'cut-line',
    size: label,
    piece: piece.plan.name,
    subject: crossed[0] ?? seam,
    measured: kept,
    expected: wanted,
    tolerance: ALLOWANCE_KEPT,
    source: "the engine's own rule: the cut line is parallel to the sewing line",
    message:
      crossed.length > 0
        ? `the cut line crosses the sewing line at ${crossed.join(', ')}`
        : held
          ? 'the cut line keeps its allowance from the sewing line all round'
          : `the cut line comes within ${showLength(kept, display)} of the seam ${seam}, ` +
            `${shopLength(wanted, display)} of allowance are asked for`,
  });
}
