/** Every check of a graded range. */
import type { GradedRange } from '../grade/graded-range';
import type { LengthDisplay } from '../units';
import { checkCutLines } from './cut-line';
import { checkDartNumber } from './dart-number';
import { checkDartTruing } from './dart-truing';
import { checkDarts } from './darts';
import { checkFacings } from './facing';
import type { Finding } from './finding';
import { checkFinishedGirths } from './finished-girths';
import { checkGradedEqualsDraft } from './graded-equals-draft';
import { checkLining } from './lining';
import { checkOutlineSimple } from './outline-simple';
import { checkNotches } from './notches';
import { noteRoundingDrift } from './rounding-drift';
import { checkRuleFormulas } from './rule-formula';
import { checkSeamsMatch } from './seams-match';
import { checkSquareCorners } from './square-corners';
import { checkStride } from './stride';
import { noteTruing } from './truing';
import { checkTurnUps } from './turn-up';
import { checkVent } from './vent';
import { checkWaistband } from './waistband';
import { checkZip } from './zip';
import { checkSideTakeUp, noteHipCorner } from './side-seam';

/** All findings of a drafted skirt, check by check; lengths in their words as `display` says. */
export function checkRange(range: GradedRange, display: LengthDisplay): Finding[] {
  return [
    ...checkGradedEqualsDraft(range, display),
    ...checkRuleFormulas(range, display),
    ...checkFinishedGirths(range, display),
    ...checkSeamsMatch(range, display),
    ...checkDarts(range, display),
    ...checkDartNumber(range, display),
    ...checkDartTruing(range, display),
    ...checkSquareCorners(range),
    ...noteTruing(range, display),
    ...checkSideTakeUp(range, display),
    ...noteHipCorner(range),
    ...checkStride(range, display),
    ...checkVent(range, display),
    ...checkWaistband(range, display),
    ...checkFacings(range, display),
    ...checkLining(range, display),
    ...checkZip(range, display),
    ...checkOutlineSimple(range),
    ...checkCutLines(range, display),
    ...checkTurnUps(range, display),
    ...checkNotches(range, display),
    ...noteRoundingDrift(range, display),
  ];
}
