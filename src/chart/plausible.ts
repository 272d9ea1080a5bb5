/** Where a body measurement can lie at all: beyond it a cell is a slip and not a body. */
import type { LengthUnit } from '../units';
import { LENGTH_UNITS, fromMillimeters, toMillimeters } from '../units';

/** mm, both ends still possible. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
}

/**
 * From the smallest to the largest adult, with room beyond the published tables bundled here and
 * the surveys; the engine's own figures.
 */
export const ADULT_GIRTHS: Readonly<Record<string, Bounds>> = {
  waist_girth: { least: 450, most: 1750 },
  hip_girth: { least: 550, most: 1900 },
  high_hip_girth: { least: 500, most: 1850 },
  bust_girth: { least: 550, most: 1900 },
  thigh_girth: { least: 300, most: 1150 },
  knee_girth: { least: 220, most: 560 },
  calf_girth: { least: 200, most: 700 },
  ankle_girth: { least: 140, most: 450 },
};

/**
 * Of the same adults, and of skirts from the shortest to the longest. Close enough that a usual
 * number of inches is none of centimeters: 24 is no skirt in cm, nor 8 a depth of the hip.
 */
const ADULT_LENGTHS: Readonly<Record<string, Bounds>> = {
  stature: { least: 1200, most: 2250 },
  waist_height: { least: 700, most: 1450 },
  hip_height: { least: 500, most: 1250 },
  knee_height: { least: 280, most: 700 },
  crotch_height: { least: 480, most: 1100 },
  waist_to_hip: { least: 100, most: 400 },
  waist_to_high_hip: { least: 50, most: 200 },
  waist_to_knee: { least: 350, most: 850 },
  inside_leg_length: { least: 480, most: 1150 },
  outside_leg_length: { least: 700, most: 1500 },
  skirt_length: { least: 300, most: 1350 },
};

/** No body and no garment is longer, and none of their lengths is shorter. */
const LENGTHS: Bounds = { least: 10, most: 5000 };

/** The bounds of a known measurement. */
export function boundsOf(name: string): Bounds {
  return ADULT_GIRTHS[name] ?? ADULT_LENGTHS[name] ?? LENGTHS;
}

/** True where a length (mm) lies in the bounds of the measurement. */
export function isPlausible(name: string, mm: number): boolean {
  const { least, most } = boundsOf(name);
  return mm >= least && mm <= most;
}

/**
 * True where the number typed is no body's in any unit. A girth that would be an adult's in another
 * unit than the chart's may be a child's, and only its owner can tell; a length has one unit, the
 * chart's.
 */
export function isImpossible(name: string, mm: number, unit: LengthUnit): boolean {
  const typed = fromMillimeters(mm, unit);
  const units = name in ADULT_GIRTHS ? LENGTH_UNITS : [unit];
  return units.every((candidate) => !isPlausible(name, toMillimeters(typed, candidate)));
}
