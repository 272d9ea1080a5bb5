/** The step to which rules are rounded, as somebody types it. */
import { parseLength } from '../table/number-cell';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { toMillimeters } from '../units';

/** mm. Anything coarser is no rounding but another pattern. */
const COARSEST = toMillimeters(1 / 2, 'in');

/** The step in mm; `unit` is that of a bare number. Throws InputError `bad-option`. */
export function readRoundingStep(text: string, unit: LengthUnit): number {
  const step = parseLength(text, unit);
  if (step !== undefined && step > 0 && step <= COARSEST) return step;
  throw new InputError('bad-option', {
    what: 'the rounding step is not usable',
    allowed: 'a length above 0 up to 1/2 in, such as 1/16in or 0.5mm',
    got: text,
    place: { field: 'round' },
  });
}
