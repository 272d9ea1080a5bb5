/** Allowances and zips as a shop says them: in both markets' units, round in each. */
import { AS_ROUND, SAME_AS_TYPED } from '../tolerance';
import type { LengthDisplay, LengthUnit } from '../units';
import { fromMillimeters, inchFraction, toMillimeters, trimmed } from '../units';

/** mm of the steps of each unit, the roundest first; the last is always near enough. */
const STEPS: Readonly<Record<'in' | 'cm', readonly number[]>> = {
  in: [1 / 4, 1 / 8, 1 / 16].map((inches) => toMillimeters(inches, 'in')),
  cm: [5, 1],
};
/** mm. What somebody may have set in a unit is a whole number of these, and is said as it is. */
const TYPED: Readonly<Record<'in' | 'cm', number>> = { in: toMillimeters(1 / 32, 'in'), cm: 0.5 };
/** A quarter of an inch is a step from here on, mm; below it, of eighths. */
const QUARTERS_FROM = toMillimeters(1, 'in');

/** What zips are sold in, mm: whole inches, and even centimeters. Common practice, no source. */
const ZIP_STEPS: Readonly<Record<'in' | 'cm', number>> = { in: toMillimeters(1, 'in'), cm: 20 };
/** mm by which a zip of the other market may be shorter than the one that is named. */
const ZIP_SHORT = 10;

/**
 * A length of `mm` in the unit that is shown and, in parentheses, the other market's: `5/8 in (1.5 cm)`.
 * In a unit in which it is a whole number of 1/32 in or of half millimeters it stands as it is; else as the
 * nearest quarter (from an inch on), eighth or half centimeter where that is near, or the nearest
 * sixteenth or millimeter. Common practice, no source.
 */
export function shopLength(mm: number, { unit }: Pick<LengthDisplay, 'unit'>): string {
  return inBoth(unit, (market) => rounded(mm, market));
}

/**
 * A zip of `mm` in both markets: `20 cm (8 in)`. In its own it stands as it is; in the other it is the
 * shortest one sold that is not more than 1 cm shorter.
 */
export function shopZip(mm: number, { unit }: Pick<LengthDisplay, 'unit'>): string {
  return inBoth(unit, (market) => zipLength(mm, market));
}

/** The same zip in one market alone and without its unit, for a table. */
export function shopZipIn(mm: number, market: 'in' | 'cm'): string {
  return inMarket(zipLength(mm, market), market);
}

function zipLength(mm: number, market: 'in' | 'cm'): number {
  if (isTyped(mm, market)) return mm;
  return ZIP_STEPS[market] * Math.ceil((mm - ZIP_SHORT) / ZIP_STEPS[market]);
}

function rounded(mm: number, market: 'in' | 'cm'): number {
  if (isTyped(mm, market)) return mm;
  const steps = STEPS[market];
  const finest = steps.at(-1) ?? 1;
  const near = steps
    .slice(market === 'in' && mm < QUARTERS_FROM ? 1 : 0)
    .map((step) => step * Math.round(mm / step))
    .find((round) => Math.abs(round - mm) <= Math.max(AS_ROUND.mm, AS_ROUND.share * mm));
  return near ?? finest * Math.round(mm / finest);
}

/** What is whole in both, such as 254 mm, was set in inches: few lengths in centimeters are by chance. */
function isTyped(mm: number, market: 'in' | 'cm'): boolean {
  return isWhole(mm, TYPED[market]) && (market === 'in' || !isWhole(mm, TYPED.in));
}

function isWhole(mm: number, step: number): boolean {
  return Math.abs(mm - step * Math.round(mm / step)) <= SAME_AS_TYPED;
}

/** The length of each market, in mm, as words: the one that is shown first. */
function inBoth(unit: LengthUnit, market: (of: 'in' | 'cm') => number): string {
  const inches = `${inMarket(market('in'), 'in')} in`;
  const metric = unit === 'mm' ? 'mm' : 'cm';
  const metrically = `${inMarket(market('cm'), metric)} ${metric}`;
  return unit === 'in' ? `${inches} (${metrically})` : `${metrically} (${inches})`;
}

function inMarket(mm: number, unit: 'in' | 'cm' | 'mm'): string {
  return unit === 'in' ? inchFraction(mm, 32) : trimmed(fromMillimeters(mm, unit), 2);
}
