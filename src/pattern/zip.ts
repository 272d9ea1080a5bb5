/** The zip at center back: how long the opening must be, and the zip that is bought for it. */
import { HALF_STEP } from '../tolerance';
import type { Piece } from './piece';
import { pointOf } from './piece';

/** mm from the end of the opening to the hip line where a style does not say. */
const ABOVE_HIP = 20;

/** mm from the waist at center back. */
export interface Zip {
  /** What lets the waist pass the hip. */
  readonly opening: number;
  /** The next whole number of `zip_step`; undefined where a style has no such step. */
  readonly length: number | undefined;
}

/**
 * The zip of a skirt. The opening ends `zip_above_hip` short of the hip line, 20 mm if the style
 * does not say (common practice, no source: 1 to 2 cm). The zip is snapped to its step after
 * grading, since zips do not grade continuously. Undefined for pieces without a back.
 */
export function zipOf(
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): Zip | undefined {
  const back = pieces.find(({ plan }) => plan.name === 'back');
  if (back === undefined) return undefined;
  const short = parameters.get('zip_above_hip') ?? ABOVE_HIP;
  const step = parameters.get('zip_step');
  const opening = pointOf(back, 'center_hip').y - pointOf(back, 'center_waist').y - short;
  const length = step === undefined ? undefined : step * Math.ceil(opening / step - HALF_STEP);
  return { opening, length };
}
