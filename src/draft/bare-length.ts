/** Lengths that are set without a unit where nothing says which one they take. */
import { InputError, readEach } from '../errors';
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
  readEach(settings, (setting) => {
    const typed = bareLength(style, setting);
    if (setting.unit !== undefined || typed === undefined) return;
    throw new InputError('unit-missing', {
      what: `${setting.parameter} is a length without a unit: ${why}`,
      allowed: `${typed} in or ${typed} cm`,
      got: typed,
      place: setting.place,
    });
  });
}

/** A length other than zero that is set as a number alone, which counts in the unit of its file or of the chart. */
export function bareLength(style: Style, setting: Setting): string | undefined {
  const typed = typeof setting.value === 'string' ? setting.value.trim() : '';
  if (!NUMBER.test(typed) || Number(typed) === 0) return undefined;
  return findParameter(style, setting).quantity === 'length' ? typed : undefined;
}
