/** The ruler that a derivation ends at where nobody names one. */
import type { LengthUnit } from '../../units';
import { toMillimeters } from '../../units';

/** mm. Rulers in use for patterns: common practice, no source. */
export const USUAL_RULER: Readonly<Record<LengthUnit, number>> = {
  in: toMillimeters(1 / 16, 'in'),
  cm: 1,
  mm: 1,
};
