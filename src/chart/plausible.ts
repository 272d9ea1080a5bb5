/** Where a body measurement can lie at all: beyond it a cell is a slip and not a body. */
import type { LengthUnit } from '../units';
import { LENGTH_UNITS, fromMillimeters, toMillimeters } from '../units';
import { MEASUREMENTS } from './vocabulary';

/** mm, both ends still possible. */
export interface Bounds {
  readonly least: number;
  readonly most: number;
}

/** The known girths, the waist first. */
export const GIRTHS: readonly string[] = MEASUREMENTS.flatMap(({ name }) =>
  name.endsWith('_girth') ? [name] : [],
);

/** No body and no garment is longer, and none of their lengths is shorter. */
const LENGTHS: Bounds = { least: 10, most: 5000 };

/** The bounds of a known measurement. */
export function boundsOf(name: string): Bounds {
  return MEASUREMENTS.find((known) => known.name === name) ?? LENGTHS;
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
  const units = GIRTHS.includes(name) ? LENGTH_UNITS : [unit];
  return units.every((candidate) => !isPlausible(name, toMillimeters(typed, candidate)));
}
