/**
 * The stride that a skirt allows.
 *
 * At a level below the hip joint the two legs are d = step * depth below the joint / leg length
 * apart, and a taut band round both, each of girth c, measures c + 2d. Derived from the lengths
 * alone; no published table confirms it, and one remembered from a textbook lies 2 to 10 % above
 * it, so it runs a few per cent low.
 */
import type { GirthProfile } from './girth-profile';
import { girthAt, turnsBetween } from './girth-profile';
import type { Walker } from './walker';

/** A step in mm, and the level in mm below the waist line that keeps it from being longer. */
export interface Stride {
  readonly step: number;
  readonly level: number;
}

/** The girth in mm that a step needs at a level. */
export function girthForStep(step: number, level: number, walker: Walker): number {
  const depth = Math.max(0, level - walker.hipJoint);
  return girthAt(walker.limb, level) + (2 * step * depth) / walker.leg;
}

/** The longest step in mm that a girth allows at a level; no step is longer than both legs. */
export function stepInGirth(girth: number, level: number, walker: Walker): number {
  const depth = level - walker.hipJoint;
  const longest = 2 * walker.leg;
  if (depth <= 0) return longest;
  const apart = Math.max(0, girth - girthAt(walker.limb, level)) / 2;
  return Math.min(longest, (apart * walker.leg) / depth);
}

/**
 * The longest step in a skirt that is open from the hem up to `opening` mm above it. Between two
 * turns of the profiles the step only rises or only falls, so the turns hold the least.
 */
export function longestStride(skirt: GirthProfile, walker: Walker, opening = 0): Stride {
  const { top, bottom } = ends(skirt);
  const closed = turnsBetween([skirt, walker.limb], top, Math.max(top, bottom - opening));
  return closed
    .map((level) => ({ step: stepInGirth(girthAt(skirt, level), level, walker), level }))
    .reduce((least, stride) => (stride.step <= least.step ? stride : least));
}

/** How many mm above the hem a skirt must be open for a step: to its top where nothing helps. */
export function openingForStep(step: number, skirt: GirthProfile, walker: Walker): number {
  const { top, bottom } = ends(skirt);
  const short = (level: number): number =>
    girthForStep(step, level, walker) - girthAt(skirt, level);
  const levels = turnsBetween([skirt, walker.limb], top, bottom);
  const first = levels.findIndex((level) => short(level) > 0);
  const below = levels[first];
  if (below === undefined) return 0;
  const above = levels[first - 1];
  if (above === undefined) return bottom - top;
  const t = short(above) / (short(above) - short(below));
  return bottom - (above + t * (below - above));
}

function ends(skirt: GirthProfile): { readonly top: number; readonly bottom: number } {
  return { top: skirt[0]?.level ?? NaN, bottom: skirt.at(-1)?.level ?? NaN };
}
