/** Notes beside the cells of a table, which no reader takes for more. */
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { parseNumberCell } from './number-cell';
import type { SaidLine } from './said-line';
import { seemsFraction, seemsScale } from './seeming';
import { excerpt } from './tidy-text';
import { unitNamed } from './unit-name';

/**
 * Throws InputError for a note that says how the numbers beside it count, since to a person `5` with the
 * note `cm` is 5 cm: `unit-contradicted` for a unit other than `unit`, `sheet-malformed` for a fraction of
 * one or a scale. A length alone is that of something else.
 */
export function refuseCountingNotes(
  { notes }: { readonly notes: readonly SaidLine[] },
  unit: LengthUnit | undefined,
): void {
  for (const { text, parts, place } of notes) {
    if (parseNumberCell(text).kind !== 'not-a-number') continue;
    const isOther = parts.some((part) => part.name === 'unit' && unitNamed(part.text) !== unit);
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
