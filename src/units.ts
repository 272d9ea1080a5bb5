/** Lengths at the edge of the engine. Inside everything is millimeters; only this file converts. */

/** A unit in which lengths are read and written. */
export type LengthUnit = 'in' | 'cm' | 'mm';

/** The units in words, for headings. */
export const UNIT_WORDS: Readonly<Record<LengthUnit, string>> = {
  in: 'inches',
  cm: 'centimeters',
  mm: 'millimeters',
};

/** Every unit there is, for options and for messages. */
export const LENGTH_UNITS: readonly LengthUnit[] = ['in', 'cm', 'mm'];

/**
 * Converts a length to millimeters. Inches go through the whole number 254, so that every eighth,
 * sixteenth and thirty-second of an inch gives the double nearest to its true value.
 */
export function toMillimeters(value: number, unit: LengthUnit): number {
  switch (unit) {
    case 'in':
      return (value * 254) / 10;
    case 'cm':
      return value * 10;
    case 'mm':
      return value;
  }
}

/** Converts millimeters to `unit`. The result is not rounded. */
export function fromMillimeters(mm: number, unit: LengthUnit): number {
  switch (unit) {
    case 'in':
      return (mm * 10) / 254;
    case 'cm':
      return mm / 10;
    case 'mm':
      return mm;
  }
}

/** Centimeters in an inch, where a number without its unit is taken for the other. */
export const CENTIMETERS_PER_INCH = 2.54;

/** Points in an inch: the unit of a PDF page (ISO 32000-1 clause 8.3.2.3). */
export const POINTS_PER_INCH = 72;
/** Points in a millimeter. */
export const POINTS_PER_MILLIMETER = POINTS_PER_INCH / 25.4;

/** Pixels in a millimeter on a screen that nobody has measured: 96 in an inch (CSS Values and Units 4, section 6.2). */
export const PIXELS_PER_MILLIMETER = 96 / 25.4;

/** Yards of 36 inches, by which cloth is sold, in millimeters. */
export function yardsToMillimeters(yards: number): number {
  return yards * 914.4;
}

/** Millimeters in yards of 36 inches. */
export function inYards(mm: number): number {
  return mm / yardsToMillimeters(1);
}

/** Decimals a table needs so that neither 0.001 mm nor a sixty-fourth of an inch is ever lost. */
const TABLE_DECIMALS: Record<LengthUnit, number> = { in: 6, cm: 4, mm: 3 };
/**
 * Share of a length. No tolerance: more than the noise of arithmetic and less than is written, so that
 * 0.0625 is 0.063 however it was found.
 */
const LAST_HALF = 1e-12;
/** Decimals for reading: about a tenth of a millimeter. */
const DISPLAY_DECIMALS: Record<LengthUnit, number> = { in: 3, cm: 2, mm: 1 };

/** A plain number for a machine-readable table: no trailing zeros, no negative zero. */
export function tableNumber(mm: number, unit: LengthUnit): string {
  return trimmed(fromMillimeters(mm, unit), TABLE_DECIMALS[unit]);
}

/**
 * A number with at most `decimals` decimals, without trailing zeros or a negative zero. Throws
 * RangeError for one that is not finite, which is never wrong input here but a fault.
 */
export function trimmed(value: number, decimals: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} was to be written as a number`);
  return String(Number(value.toFixed(decimals)));
}

/** in. A length this near a fraction is written as it: half of the last of three decimals. */
const NEAR_FRACTION = 0.5 * 10 ** -DISPLAY_DECIMALS.in;

/**
 * Inches as a mixed fraction, such as `26 1/2` or `-7/16`, if the length is within NEAR_FRACTION of a
 * whole number of `denominator`ths; otherwise decimals.
 */
export function inchFraction(mm: number, denominator = 64): string {
  const inches = fromMillimeters(mm, 'in');
  let parts = Math.round(Math.abs(inches) * denominator);
  if (Math.abs(Math.abs(inches) - parts / denominator) > NEAR_FRACTION) return trimmed(inches, 3);
  let lowest = denominator;
  while (lowest > 1 && parts % 2 === 0) {
    parts /= 2;
    lowest /= 2;
  }
  if (parts === 0) return '0';
  const sign = inches < 0 ? '-' : '';
  const whole = Math.floor(parts / lowest);
  const rest = parts % lowest;
  if (rest === 0) return `${sign}${whole}`;
  return `${sign}${whole > 0 ? `${whole} ` : ''}${rest}/${lowest}`;
}

/** Yards to buy as a mixed fraction of eighths, which is written as it is for inches: `1 3/8`. */
export function yardsTold(yards: number): string {
  return inchFraction(toMillimeters(yards, 'in'), 8);
}

/** How lengths are shown: a unit, and whether people, and whether tables, are given inches as fractions. */
export interface LengthDisplay {
  readonly unit: LengthUnit;
  readonly fractions: boolean;
  /** Decimals if absent. */
  readonly fractionTables?: boolean;
}

/** A length for reading, without its unit: `26.5`, or `26 1/2` where fractions are wanted. */
export function showNumber(mm: number, display: LengthDisplay): string {
  if (display.unit === 'in' && display.fractions) return inchFraction(mm);
  // A half at the last decimal is rounded alike whatever way its length was found.
  return trimmed(
    fromMillimeters(mm, display.unit) * (1 + LAST_HALF),
    DISPLAY_DECIMALS[display.unit],
  );
}

/**
 * A length for a table that programs read: decimals, or where fractions are wanted and the length
 * is a whole number of sixty-fourths, a fraction.
 */
export function tableLength(mm: number, display: LengthDisplay): string {
  const decimals = tableNumber(mm, display.unit);
  if (display.unit !== 'in' || display.fractionTables !== true) return decimals;
  return Number.isInteger(Number(decimals) * 64) ? inchFraction(mm) : decimals;
}

/** A length for reading with its unit: `26.5 in`. */
export function showLength(mm: number, display: LengthDisplay): string {
  return `${showNumber(mm, display)} ${display.unit}`;
}
