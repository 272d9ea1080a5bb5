/** What may be asked of any range, understood: lengths, sizes, rounding. */
import { InputError } from '../errors';
import type { Rounding } from '../grade/grade-sizes';
import type { SizedPattern } from '../grade/graded-pattern';
import { readRoundingStep } from '../grade/rounding-step';
import type { SeamPair } from '../pattern/seam-pair';
import { roundSewn } from '../seams/round-sewn';
import { matchSize } from '../table/name-match';
import { wantedSizes } from '../table/near-names';
import type { LengthUnit } from '../units';

/** A size label as the range has it. Throws InputError `size-unknown`. */
export function knownSize(
  labels: readonly string[],
  label: string,
  field: string,
  file: string,
): string {
  const known = matchSize(label, labels);
  if (known !== undefined) return known;
  throw new InputError('size-unknown', {
    what: 'the range has no such size',
    ...wantedSizes(label, labels),
    got: label,
    place: { field, file },
  });
}

/** The sizes asked for, in the order of the range. Throws InputError `size-unknown`. */
export function shownSizes(
  sizes: readonly SizedPattern[],
  asked: readonly string[] | undefined,
  file: string,
): readonly SizedPattern[] {
  const labels = sizes.map(({ label }) => label);
  const known = asked?.map((label) => knownSize(labels, label, 'sizes', file));
  return sizes.filter(({ label }) => known === undefined || known.includes(label));
}

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
