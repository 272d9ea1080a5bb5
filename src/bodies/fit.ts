/** Whom a size fits: waist and hip each within what the garment gives and takes. */
import { SAME_PLACE } from '../tolerance';

/** How far a body may be from the one that a size is made for, all in mm. */
export interface Tolerance {
  /** By how much a body may be larger. */
  readonly larger: number;
  /** By how much it may be smaller: more would hang loose. */
  readonly smaller: number;
}

/** The ease of a garment in mm, how far a body may be off, and what the cloth gives. */
export interface FitRule {
  /** mm by which the finished garment is larger than the body that it is made for. */
  readonly ease: number;
  /** mm by which a body may differ from that one, either way. */
  readonly tolerance: number;
  /** Share by which the cloth stretches when it is worn; 0 for a cloth that does not. */
  readonly give: number;
}

/**
 * The tolerance of a girth of `girth` mm. A larger body takes of the ease, and never more than there is;
 * a cloth that gives adds what it gives.
 */
export function toleranceOf({ ease, tolerance, give }: FitRule, girth: number): Tolerance {
  return {
    larger: Math.min(tolerance, Math.max(0, ease)) + give * (girth + ease),
    smaller: tolerance,
  };
}

/** A size with the bodies that it fits: a box over waist and hip, in mm. */
export interface FittedSize {
  readonly label: string;
  readonly waist: number;
  readonly hip: number;
  readonly waistTolerance: Tolerance;
  readonly hipTolerance: Tolerance;
}

/** The rules of a range. */
export interface FitRules {
  readonly waist: FitRule;
  readonly hip: FitRule;
}

/** A size for a body of `waist` and `hip` mm under these rules. */
export function fittedSize(
  { label, waist, hip }: { readonly label: string; readonly waist: number; readonly hip: number },
  rules: FitRules,
): FittedSize {
  return {
    ...{ label, waist, hip },
    waistTolerance: toleranceOf(rules.waist, waist),
    hipTolerance: toleranceOf(rules.hip, hip),
  };
}

/** A body's waist and hip in mm. */
export interface Girths {
  readonly waist: number;
  readonly hip: number;
}

/**
 * By how much a body misses a girth. Up to 1 it fits: 0 is the body that the size is made for, 1 one at the
 * end of its tolerance. Beyond, each more is as much again as it may be smaller, so that where there is no ease
 * a little too tight is less than much too tight.
 */
export function missOf(body: number, girth: number, { larger, smaller }: Tolerance): number {
  const off = Math.abs(body - girth);
  const room = body > girth ? larger : smaller;
  // What is typed in inches meets its tolerance but for rounding.
  if (off <= SAME_PLACE) return 0;
  return off <= room + SAME_PLACE ? Math.min(1, off / room) : 1 + (off - room) / smaller;
}

/** The larger of both misses. */
export function misfit({ waist, hip }: Girths, size: FittedSize): number {
  return Math.max(
    missOf(waist, size.waist, size.waistTolerance),
    missOf(hip, size.hip, size.hipTolerance),
  );
}

/** Whom no size fits, and why. */
export const LEFT_OUT = ['below', 'above', 'between', 'fuller-hip', 'slimmer-hip'] as const;
/** One of them. */
export type LeftOut = (typeof LEFT_OUT)[number];

/** The place of a body in a range: the index of the size that fits best, or why none fits. */
export type RangePlace = number | LeftOut;

/**
 * Where a body stands. `below` and `above` are beyond the range in waist or hip; with a `fuller-hip` some
 * size fits the waist and only a larger one the hip, with a `slimmer-hip` only a smaller one; `between`
 * falls into a gap between neighbors.
 */
export function placeIn(sizes: readonly FittedSize[], body: Girths): RangePlace {
  let [best, least] = [-1, Infinity];
  let waists: readonly [number, number] = [Infinity, -Infinity];
  let hips: readonly [number, number] = [Infinity, -Infinity];
  const beyond = { below: true, above: true, hipBelow: true, hipAbove: true };
  for (const [i, size] of sizes.entries()) {
    const waist = missOf(body.waist, size.waist, size.waistTolerance);
    const hip = missOf(body.hip, size.hip, size.hipTolerance);
    const miss = Math.max(waist, hip);
    if (miss <= 1 && miss < least) [best, least] = [i, miss];
    if (waist <= 1) waists = [Math.min(waists[0], i), Math.max(waists[1], i)];
    if (hip <= 1) hips = [Math.min(hips[0], i), Math.max(hips[1], i)];
    beyond.below &&= waist > 1 && body.waist < size.waist;
    beyond.above &&= waist > 1 && body.waist > size.waist;
    beyond.hipBelow &&= hip > 1 && body.hip < size.hip;
    beyond.hipAbove &&= hip > 1 && body.hip > size.hip;
  }
  if (best >= 0) return best;
  if (beyond.above || beyond.hipAbove) {
    if (beyond.below) return 'fuller-hip';
    return beyond.hipBelow ? 'slimmer-hip' : 'above';
  }
  if (beyond.below || beyond.hipBelow) return 'below';
  const [fromWaist, toWaist] = waists;
  const [fromHip, toHip] = hips;
  if (fromHip > toWaist && toHip >= 0 && toWaist >= 0) return 'fuller-hip';
  if (toHip < fromWaist && toHip >= 0 && toWaist >= 0) return 'slimmer-hip';
  return 'between';
}
