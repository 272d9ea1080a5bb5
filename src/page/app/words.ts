/** Words that the parts of the page have in common. */
import type { LengthDisplay } from '../../units';
import { showLength, showNumber } from '../../units';

/** `center_back` as `center back`. */
export function spaced(name: string): string {
  return name.replaceAll('_', ' ');
}

/** A length with its unit, and in the other unit behind it. */
export function inBothUnits(mm: number, display: LengthDisplay): string {
  return `${showLength(mm, display)} (${showLength(mm, otherDisplay(display))})`;
}

/** Inches for metric lengths, centimeters for inches. */
export function otherDisplay({ unit }: LengthDisplay): LengthDisplay {
  return unit === 'in' ? { unit: 'cm', fractions: false } : { unit: 'in', fractions: true };
}

/** A length with its sign. */
export function signed(mm: number, display: LengthDisplay): string {
  const shown = showNumber(mm, display);
  return shown.startsWith('-') || shown === '0' ? shown.replace('-', '\u2212') : `+${shown}`;
}
