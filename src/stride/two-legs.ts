/**
 * A taut band round two legs that stand apart in a step: plain geometry, not yet calibrated.
 *
 * At a level below the crotch each leg is a circle of the limb's girth c. The step puts their
 * centers step * depth below the hip joint / leg length apart, fore and aft. Side by side they are a
 * limb's diameter apart, c / pi, since a leg that passes the other needs that much: this is the
 * least distance, and derived. A band round two equal circles whose centers are d apart is their
 * hull, c + 2d.
 */
import { girthAt } from './girth-profile';
import type { Walker } from './walker';

/** The girth in mm of the hull of both legs a step apart; above the crotch as at the crotch. */
export function hullOfLegs(step: number, level: number, walker: Walker): number {
  const at = Math.max(level, walker.crotch);
  const limb = girthAt(walker.limb, at);
  const foreAndAft = (step * (at - walker.hipJoint)) / walker.leg;
  return limb + 2 * Math.hypot(foreAndAft, limb / Math.PI);
}

/**
 * The step in mm whose hull is as long as a girth: none where both legs side by side fill it. Above
 * the crotch, where the legs have not parted, nothing holds it, and it is as long as both legs.
 */
export function stepOfHull(girth: number, level: number, walker: Walker): number {
  const longest = 2 * walker.leg;
  if (level < walker.crotch) return longest;
  const limb = girthAt(walker.limb, level);
  const [apart, side] = [(girth - limb) / 2, limb / Math.PI];
  if (apart <= side) return 0;
  const foreAndAft = Math.sqrt(apart ** 2 - side ** 2);
  return Math.min(longest, (foreAndAft * walker.leg) / (level - walker.hipJoint));
}
