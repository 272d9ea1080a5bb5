/** Cut lines that a given pattern's own allowances make. */
import { allowanceParameters, clockwise } from '../given/cut-given';
import type { GivenPattern } from '../given/pattern';
import type { GradedPattern } from '../grade/graded-range';
import type { LengthDisplay } from '../units';
import { checkCutLine } from './cut-line';
import type { Finding } from './finding';

/** One finding for each size of each piece that states allowances. */
export function checkGivenCutLines(
  { pieces }: GivenPattern,
  { sizes }: GradedPattern,
  display: LengthDisplay,
): Finding[] {
  return sizes.flatMap(({ label, cutPieces = [] }) =>
    cutPieces.flatMap((cut, p) => {
      const allowances = pieces[p]?.allowances;
      if (allowances === undefined || allowances.size === 0) return [];
      const piece = { ...cut, piece: clockwise(cut.piece) };
      return [checkCutLine(piece, allowanceParameters(allowances), label, display)];
    }),
  );
}
