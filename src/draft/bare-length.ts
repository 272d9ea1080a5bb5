/** Lengths that are set without a unit where nothing says which one they take. */
import { InputError } from '../errors';
import type { Setting } from './setting';
import type { Style } from './styles';
import { findParameter } from './styles';

/** `26`, `1 1/2`, `2.5`: a number alone. */
const NUMBER = /^[+-]?\d[\d\s./,½¼¾⅛⅜⅝⅞]*$/u;

/**
 * Throws InputError `unit-missing`, saying why the unit is not known, for a length that is set as a bare
 * number other than zero and has no unit of its own.
 */
export function refuseBareLengths(style: Style, settings: readonly Setting[], why: string): void {
  for (const setting of settings) {
    const { value, unit, place } = setting;
    if (typeof value !== 'string' || unit !== undefined) continue;
    const typed = value.trim();
    if (!NUMBER.test(typed) || Number(typed) === 0) continue;
    if (findParameter(style, setting).quantity !== 'length') continue;
    throw new InputError('unit-missing', {
      what: `${setting.parameter} is a length without a unit: ${why}`,
      allowed: `${typed} in or ${typed} cm`,
      got: typed,
      place,
    });
  }
}
