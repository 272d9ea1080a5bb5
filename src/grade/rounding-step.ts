/** The step to which rules are rounded, as somebody types it. */
import { lengthWithUnit } from '../table/length-with-unit';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { toMillimeters } from '../units';

/** mm. Anything coarser is no rounding but another pattern. */
const COARSEST = toMillimeters(1 / 2, 'in');

/**
 * The step in mm. Throws InputError `bad-option`, also for a number without its unit; the refusal
 * shows it in `unit` and in mm.
 */
export function readRoundingStep(text: string, unit: LengthUnit): number {
  const step = lengthWithUnit(text, unit, 'round');
  if (step !== undefined && step > 0 && step <= COARSEST) return step;
  throw new InputError('bad-option', {
    what: 'the rounding step is not usable',
    allowed: 'a length above 0 up to 1/2 in, such as 1/16in or 0.5mm',
    got: text,
    place: { field: 'round' },
  });
}
