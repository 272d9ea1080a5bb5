/** The zip at center back: how long the opening must be, and the zip that is bought for it. */
import type { Piece } from '../pattern/piece';
import { pointOf } from '../pattern/piece';
import { HALF_STEP } from '../tolerance';
import type { Measure } from './finished';

/**
 * The opening that lets the waist pass the hip, `zip_above_hip` short of the hip line, and the zip:
 * the next whole number of `zip_step`, snapped after grading, since zips do not grade continuously.
 * In mm; nothing for a style without these parameters.
 */
export function zipMeasures(
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): readonly Measure[] {
  const back = pieces.find(({ plan }) => plan.name === 'back');
  const step = parameters.get('zip_step');
  const short = parameters.get('zip_above_hip');
  if (back === undefined || step === undefined || short === undefined) return [];
  const opening = pointOf(back, 'center_hip').y - pointOf(back, 'center_waist').y - short;
  return [
    { name: 'zip_opening', value: opening },
    { name: 'zip_length', value: step * Math.ceil(opening / step - HALF_STEP) },
  ];
}
