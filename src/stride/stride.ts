/**
 * The stride that a skirt allows, as a careful figure.
 *
 * The hull of two legs (two-legs.ts) is set by a table of a textbook on skirts for a step of 67 cm,
 * remembered and unverified: girths of 94 cm above the knee, 100 at the knee, 126 at the upper calf,
 * 134 at the lower calf and 146 at the ankle. The levels are the engine's own choice: 10 cm above the
 * knee, the knee, and 10, 20 and 36 cm below it. There the hull alone allows the reference, a body of
 * 164 cm with a hip of 95 cm, 66, 65, 75, 73 and 68 cm. The careful step is the share of it that is
 * 67 cm in none of them, so for her it errs short and not long: it gives 57 to 66 cm there, and the
 * true one may be longer by up to 18 %. It is one share for all bodies: with a hip of 84 cm it gives 61
 * to 69 cm, 2 cm long at the upper calf, and with a hip of 110 cm 45 to 62 cm. Nobody was measured:
 * another body, shoe or cloth may differ by more than the five girths do.
 */
import type { GirthProfile } from './girth-profile';
import { girthAt, turnsBetween } from './girth-profile';
import { hullOfLegs, stepOfHull } from './two-legs';
import type { Walker } from './walker';

/**
 * Shares of the hull's step: what is counted on and what is allowed at best, which are the least and
 * the greatest of the remembered table (0.888 to 1.038), rounded away from each other.
 */
const SHARE = { careful: 0.88, atBest: 1.04 };

/** All in millimeters; a step that nothing holds is infinite, since how long legs step is not measured. */
export interface Stride {
  /** The careful figure. */
  readonly step: number;
  /** The upper end of its spread. */
  readonly atBest: number;
  /** The level below the waist line that keeps the step from being longer. */
  readonly level: number;
}

/** The girth in mm that a step needs at a level, by the careful figure. */
function girthForStep(step: number, level: number, walker: Walker): number {
  return hullOfLegs(step / SHARE.careful, level, walker);
}

/** The step that a girth allows at a level; infinite where it holds none. */
function strideAt(girth: number, level: number, walker: Walker): Stride {
  const hull = stepOfHull(girth, level, walker);
  // As long as both legs: nothing holds the step, and there is nothing to be careful about.
  const held = (share: number): number =>
    Math.max(1, share) * hull >= 2 * walker.leg ? Infinity : share * hull;
  return { step: held(SHARE.careful), atBest: held(SHARE.atBest), level };
}

/**
 * The longest step in a skirt that is open from the hem up to `opening` mm above it. Between two
 * turns of the profiles (step / leg)^2 is a quadratic in 1 / depth; its lowest point, if it has one,
 * is never above zero, so where the legs have room at all the turns hold the least.
 */
export function longestStride(skirt: GirthProfile, walker: Walker, opening = 0): Stride {
  const { top, bottom } = ends(skirt, walker);
  const closed = turnsBetween([skirt, walker.limb], top, Math.max(top, bottom - opening));
  return closed
    .map((level) => strideAt(girthAt(skirt, level), level, walker))
    .reduce((least, stride) => (stride.step <= least.step ? stride : least));
}

/** Halvings that bring a skirt's length below what a double tells apart. */
const HALVINGS = 60;

/**
 * How many mm above the hem a skirt must be open for a step by the careful figure: to its top where
 * nothing helps. Between two turns the lack of girth is a hollow curve, so it begins once at most.
 */
export function openingForStep(step: number, skirt: GirthProfile, walker: Walker): number {
  const { top, bottom } = ends(skirt, walker);
  const lacks = (level: number): boolean =>
    girthForStep(step, level, walker) > girthAt(skirt, level);
  const levels = turnsBetween([skirt, walker.limb], top, bottom);
  const first = levels.findIndex(lacks);
  const [enough, lacking] = [levels[first - 1], levels[first]];
  if (lacking === undefined) return 0;
  if (enough === undefined) return bottom - (skirt[0]?.level ?? NaN);
  return bottom - lastBefore(lacks, enough, lacking);
}

/** The level at which something begins that is not so at `above` and is so at `below`. */
function lastBefore(begun: (level: number) => boolean, above: number, below: number): number {
  let [before, after] = [above, below];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (before + after) / 2;
    if (begun(middle)) after = middle;
    else before = middle;
  }
  return before;
}

/** The levels between which a skirt can hold a step: from where the legs part down to its hem. */
function ends(
  skirt: GirthProfile,
  walker: Walker,
): { readonly top: number; readonly bottom: number } {
  const bottom = skirt.at(-1)?.level ?? NaN;
  const top = skirt[0]?.level ?? NaN;
  return { top: Math.min(bottom, Math.max(top, walker.crotch)), bottom };
}
