/** Notes beside the cells of a table, which nothing reads. */
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { parseNumberCell } from './number-cell';
import { seemsFraction, seemsScale } from './seeming';
import { statementsIn } from './statement-words';
import { excerpt } from './tidy-text';
import type { TypedRow } from './typed-table';
import { unitNamed } from './unit-name';

/**
 * Throws InputError for a note that says how the numbers beside it count, since to a person `5` with the
 * note `cm` is 5 cm: `unit-contradicted` for a unit other than `unit`, `sheet-malformed` for a fraction of
 * one or a scale. A length alone is that of something else.
 */
export function refuseCountingNotes(
  rows: readonly TypedRow<'note'>[],
  unit: LengthUnit | undefined,
): void {
  for (const { text, place } of rows.map((row) => row('note'))) {
    if (parseNumberCell(text).kind !== 'not-a-number') continue;
    const isOther = statementsIn(text).some(
      (part) => part.name === 'unit' && unitNamed(part.text) !== unit,
    );
    if (!isOther && !seemsFraction(text) && !seemsScale(text)) continue;
    throw new InputError(isOther ? 'unit-contradicted' : 'sheet-malformed', {
      what: isOther
        ? 'a note names a unit, which does not count there'
        : 'a note seems to say how numbers count, which does not count there',
      allowed: 'the unit behind the value, such as 5 cm, or in a line "# unit: cm"',
      got: excerpt(text),
      place,
    });
  }
}
