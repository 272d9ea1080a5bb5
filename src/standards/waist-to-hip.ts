/**
 * How the waist-to-hip depth grows with hip and stature on measured bodies.
 *
 * 1988 Anthropometric Survey of US Army Personnel, 2208 women, least squares over the public
 * microdata: depth (natural waist height less buttock height) on hip girth and stature, and on hip
 * girth alone. Women with larger hips are taller on average, by 0.38 for 1 of hip, which is why hip
 * alone gives the steeper slope.
 */

/** The survey, as a source. */
export const WAIST_TO_HIP_SURVEY =
  '1988 Anthropometric Survey of US Army Personnel, least squares over 2208 women, not a size standard';

/** Growth of the depth per growth of hip and of stature, each with the other held. */
const TOGETHER = { hip: 0.081, stature: 0.117 };
/** Growth of the depth per growth of the hip over women of all statures. */
const HIP_ALONE = 0.126;

/** Which women a growth compares: of one stature, of the statures given, or of all statures. */
export type Compared = 'one stature' | 'statures given' | 'all statures';

/** How much deeper a larger body measures, in mm. */
export interface WaistToHipGrowth {
  readonly growth: number;
  readonly compared: Compared;
}

/** `hip` and `stature` are the growths of both in mm; a stature that is not known is undefined. */
export function waistToHipGrowth(hip: number, stature: number | undefined): WaistToHipGrowth {
  if (stature === undefined) return { growth: HIP_ALONE * hip, compared: 'all statures' };
  return {
    growth: TOGETHER.hip * hip + TOGETHER.stature * stature,
    compared: stature === 0 ? 'one stature' : 'statures given',
  };
}
