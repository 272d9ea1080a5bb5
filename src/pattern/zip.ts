/** The zip: how long its opening must be, and the zip that is bought for it. */
import { HALF_STEP } from '../tolerance';
import type { Piece } from './piece';
import { pointOf } from './piece';

/** mm from the end of the opening to the level below it where a style does not say. */
const ABOVE_HIP = 20;

/** mm from the edge of the lap to its stitching over a lapped zip (common practice, no source: 1 cm). */
export const ZIP_LAP = 10;

/** mm from the top of the opening. */
export interface Zip {
  /** What lets the waist pass the hip. */
  readonly opening: number;
  /** The next whole number of `zip_step`; undefined where a style has no such step. */
  readonly length: number | undefined;
}

/** Where the opening ends and its notch stands, mm from its top: at the end of the zip that is bought. */
export function zipEnd({ opening, length }: Zip): number {
  return length ?? opening;
}

/**
 * The zip of a garment. The opening ends `zip_above_hip` short of the level that the body must pass,
 * 20 mm if the style does not say (common practice, no source: 1 to 2 cm). The zip is snapped to its
 * step after grading, since zips do not grade continuously. Undefined for pieces without an opening.
 */
export function zipOf(
  pieces: readonly Piece[],
  parameters: ReadonlyMap<string, number>,
): Zip | undefined {
  const opened = pieces.find(({ plan }) => plan.zip !== undefined);
  if (opened?.plan.zip === undefined) return undefined;
  const { top, level } = opened.plan.zip;
  const short = parameters.get('zip_above_hip') ?? ABOVE_HIP;
  const step = parameters.get('zip_step');
  const opening = pointOf(opened, level).y - pointOf(opened, top).y - short;
  const length = step === undefined ? undefined : step * Math.ceil(opening / step - HALF_STEP);
  return { opening, length };
}
