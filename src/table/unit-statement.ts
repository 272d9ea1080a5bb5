/** Where a file says in which unit its lengths are, and what they all say together. */
import type { Place } from '../errors';
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { LENGTH_UNITS, UNIT_WORDS } from '../units';
import { excerpt } from './tidy-text';
import { unitNamed } from './unit-name';

/** A unit as it was typed, in a line, a label or a column, and where. */
export interface UnitStatement {
  readonly text: string;
  readonly place: Place;
}

/**
 * The one unit that all of them state; undefined for none. Throws InputError `unit-unknown` if a
 * statement is not a unit of length, and `unit-contradicted` if two statements disagree.
 */
export function oneUnit(statements: readonly UnitStatement[]): LengthUnit | undefined {
  let agreed: { unit: LengthUnit; place: Place } | undefined;
  for (const { text, place } of statements) {
    const unit = unitNamed(text);
    if (unit === undefined) {
      throw new InputError('unit-unknown', {
        what: 'the file states a unit that is not known',
        allowed: LENGTH_UNITS.join(', '),
        got: excerpt(text),
        place,
      });
    }
    if (agreed !== undefined && unit !== agreed.unit) {
      const [there, here] =
        agreed.place.row === undefined ? ['', ''] : [` in row ${agreed.place.row}`, ' here'];
      throw new InputError('unit-contradicted', {
        what:
          `the file states two units, ${UNIT_WORDS[agreed.unit]}${there} ` +
          `and ${UNIT_WORDS[unit]}${here}`,
        allowed: 'one unit for the whole file, in a line "# unit: in" or in columns such as dx_in',
        got: excerpt(text),
        place,
      });
    }
    agreed ??= { unit, place };
  }
  return agreed?.unit;
}
