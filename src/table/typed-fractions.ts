/** Whether somebody types inches as fractions, and so reads them as such. */
import type { LengthDisplay, LengthUnit } from '../units';

/** `26 1/2`, `7-3/8`, `\u00BC`; a date and a share of another unit are none. */
const FRACTION =
  /[\u00BC-\u00BE\u215B-\u215E]|(?<![\d/.])\d{1,2}\s?[/\u2044]\s?(?:2|4|8|16|32|64)(?![\d/])/u;

/** Whether a cell, or a file whose comments do not count, has a length typed as a fraction. */
export function hasFractions(text: string): boolean {
  return FRACTION.test(text.includes('#') ? text.replace(/^\s*"?#.*$/gmu, '') : text);
}

/**
 * How lengths are shown: in the unit asked for, else in `own`. People read inches as fractions where they
 * ask for them or have typed them; tables are read by programs, and have them only where they are asked for.
 */
export function displayAsTyped(
  asked: { readonly unit?: LengthUnit | undefined; readonly fractions?: boolean | undefined },
  own: LengthUnit,
  areTyped: boolean,
): LengthDisplay {
  const { unit = own, fractions } = asked;
  return { unit, fractions: fractions ?? areTyped, fractionTables: fractions ?? false };
}
