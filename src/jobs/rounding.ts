/** The rounding that a request asks for. */
import type { Rounding } from '../grade/grade-sizes';
import { readRoundingStep } from '../grade/rounding-step';
import type { SeamPair } from '../pattern/seam-pair';
import { roundSewn } from '../seams/round-sewn';
import type { LengthUnit } from '../units';

/**
 * To the step that was typed, if one was, so that these seams still hold; `unit` is that of a bare
 * number. Throws InputError `bad-option`.
 */
export function roundingOf(
  text: string | undefined,
  unit: LengthUnit,
  seams: readonly SeamPair[],
): Rounding | undefined {
  if (text === undefined) return undefined;
  return {
    step: readRoundingStep(text, unit),
    round: (base, rules, step) => roundSewn(base, seams, rules, step),
  };
}
