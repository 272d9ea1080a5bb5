/** A body between sizes drafted beside the base: what a blend is graded from. */
import type { Blend } from '../chart/blend';
import { BLEND_LENGTHS, readBlend } from '../chart/blend';
import type { SizeChart } from '../chart/size-chart';
import type { ResolvedParameter } from '../draft/parameters';
import { InputError } from '../errors';
import type { DraftedRange } from './draft-range';
import type { GradeRequest } from './requests';

/**
 * The blend that is asked for, if one is. Throws InputError as `readBlend` does, and `bad-option` for
 * sizes beside it.
 */
export function blendOf(
  { blend, sizes }: Pick<GradeRequest, 'blend' | 'sizes'>,
  chart: SizeChart,
): Blend | undefined {
  if (blend === undefined) return undefined;
  if (sizes !== undefined) {
    throw new InputError('bad-option', {
      what: 'a blend is drawn alone, without other sizes',
      allowed: 'a blend, or sizes',
      got: sizes.join(', '),
      place: { field: 'blend' },
    });
  }
  return readBlend(blend, chart);
}

/**
 * Of a range that was drafted with the blend the base, from which its rules start, and the blend. The
 * sizes between say nothing of it, and steps to and from it would say nothing of them. Throws
 * InputError `bad-option` for a blend whose length changes nothing.
 */
export function baseAndBlend(range: DraftedRange, base: string, blend: Blend): DraftedRange {
  refuseIdleLength(blend, range.parameters);
  return {
    ...range,
    blend: blend.label,
    sizes: range.sizes.filter(({ label }) => label === base || label === blend.label),
  };
}

/** Whoever asks for a length would take the skirt for longer or shorter than it is. */
function refuseIdleLength({ from }: Blend, parameters: readonly ResolvedParameter[]): void {
  const length = from.get('length');
  if (length === undefined || hangsOnLength('skirt_length', parameters)) return;
  throw new InputError('bad-option', {
    what: 'the blend has a size for the length, but the length of this skirt is not from the chart',
    allowed: 'a chart with a row skirt_length, or the parameter skirt_length set to what is wanted',
    got: `length ${length}`,
    place: { field: 'blend' },
  });
}

/** Whether a parameter or a row of the chart is, or is computed from, a row that follows the length. */
function hangsOnLength(name: string, parameters: readonly ResolvedParameter[]): boolean {
  const formula = parameters.find(({ definition }) => definition.name === name)?.formula;
  if (formula === undefined) return BLEND_LENGTHS.includes(name);
  return formula.names.some((used) => hangsOnLength(used, parameters));
}
