/** Lengths rounded to what a tape or a ruler shows. */
import type { LengthUnit } from '../units';
import { fromMillimeters, inchFraction, toMillimeters, trimmed } from '../units';

/** Decimals that no part of a unit needs more of. No tolerance: of what is written. */
const DECIMALS = 3;

/** A length in mm as text in `unit`, to the nearest of `parts` of it: inches as a mixed fraction. */
export function tapeLength(mm: number, unit: LengthUnit, parts: number): string {
  const value = Math.round(fromMillimeters(mm, unit) * parts) / parts;
  return unit === 'in' ? inchFraction(toMillimeters(value, unit), parts) : trimmed(value, DECIMALS);
}

/** What a reader of rounded lengths should know, `parts` in words; a line of at most 80 columns in a chart. */
export function roundedWords(parts: string, from: LengthUnit): string {
  return `rounded from ${from} to ${parts}: a step may be off by one`;
}
