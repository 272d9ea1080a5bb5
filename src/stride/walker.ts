/** Who walks in the skirt: her legs, as far as the chart tells them, else those of a reference. */
import type { GirthProfile } from './girth-profile';

/** All in millimeters. */
export interface Walker {
  readonly stature: number;
  /** True where neither chart nor style gives the stature. */
  readonly isAssumed: boolean;
  /** Hip joint to floor. */
  readonly leg: number;
  /** Level of the hip joint below the waist line. */
  readonly hipJoint: number;
  /** Level below the waist line at which the legs part. */
  readonly crotch: number;
  /** Level of the knee below the waist line. */
  readonly knee: number;
  /** The girth of one leg, at levels below the waist line. */
  readonly limb: GirthProfile;
}

/** The chart's rows that tell a walker, where it has them. */
export const WALKING_ROWS = [
  ...['stature', 'crotch_height', 'inside_leg_length', 'waist_to_knee'],
  ...['hip_girth', 'thigh_girth', 'knee_girth', 'calf_girth'],
] as const;

/** mm. Stature of the reference, taken where there is none: common practice, no source. */
const REFERENCE_STATURE = 1640;

/** The reference leg in mm, depths below the hip joint: derived; common practice, no source. */
const REFERENCE = { leg: 820, hipJoint: 170, knee: 380, hip: 950, thigh: 570, kneeGirth: 360 };

/** The reference below the knee: 5, 10, 20 and 36 cm below it, the last one the ankle. */
const LOWER_LEG = [
  { depth: 430, girth: 350 },
  { depth: 480, girth: 350 },
  { depth: 580, girth: 290 },
  { depth: 740, girth: 220 },
] as const;
const CALF = LOWER_LEG[0].girth;

/** mm of limb a mm of hip: 1988 Anthropometric Survey of US Army Personnel, 2208 women. */
const PER_HIP = { thigh: 0.681, knee: 0.302 };

/**
 * mm by which the leg is longer than the crotch is high: the reference leg against the mean of
 * 77.1 cm in the 1988 Anthropometric Survey of US Army Personnel.
 */
const JOINT_ABOVE_CROTCH = 50;

/** Girths of one leg in the band round two that touch side by side: circles, so 1 + 2 / pi. */
const BOTH_LEGS = 1 + 2 / Math.PI;

/**
 * The walker of one size; `body` holds the chart's rows in mm, `stature` the style's own, if any.
 *
 * The leg is half the stature, or 5 cm more than the crotch height where the chart has that. The
 * lengths of the reference grow with it, and the knee lies where the chart puts it. Thigh and knee
 * are the chart's, else they grow with the hip as in a survey, from the reference at a hip of
 * 95 cm; the calf is the chart's, else it grows with the knee. Both thighs side by side go into the
 * hip girth, since that is the widest, so they count no more than that: soft thighs give way.
 */
export function walkerOf(body: ReadonlyMap<string, number>, stature?: number): Walker {
  const known = stature ?? body.get('stature');
  const tall = known ?? REFERENCE_STATURE;
  const crotch = body.get('crotch_height') ?? body.get('inside_leg_length');
  const leg = crotch === undefined ? tall / 2 : crotch + JOINT_ABOVE_CROTCH;
  const scale = leg / REFERENCE.leg;
  const knee = body.get('waist_to_knee') ?? (REFERENCE.hipJoint + REFERENCE.knee) * scale;
  const hipJoint = knee - REFERENCE.knee * scale;

  const hip = body.get('hip_girth');
  const wider = (hip ?? REFERENCE.hip) - REFERENCE.hip;
  const thigh = body.get('thigh_girth') ?? REFERENCE.thigh + PER_HIP.thigh * wider;
  const kneeGirth = body.get('knee_girth') ?? REFERENCE.kneeGirth + PER_HIP.knee * wider;
  const calf = body.get('calf_girth') ?? (CALF * kneeGirth) / REFERENCE.kneeGirth;
  return {
    stature: tall,
    isAssumed: known === undefined || (!body.has('stature') && known === REFERENCE_STATURE),
    leg,
    hipJoint,
    crotch: hipJoint + JOINT_ABOVE_CROTCH,
    knee,
    limb: [
      { level: hipJoint, girth: Math.min(thigh, (hip ?? Infinity) / BOTH_LEGS) },
      { level: knee, girth: kneeGirth },
      ...LOWER_LEG.map(({ depth, girth }) => ({
        level: hipJoint + depth * scale,
        girth: (girth * calf) / CALF,
      })),
    ],
  };
}

/** Step length as a share of stature: the upper of 0.422 to 0.433 in two groups, PMC2943048 table 2. */
const STEP_OF_STATURE = 0.433;

/** The step in mm that a walker wants where the style does not say. */
export function wantedStep({ stature }: Walker): number {
  return STEP_OF_STATURE * stature;
}
