/** Measurements of one body that are no adult's: slips of the pen, or another unit. */
import { boundsOf, isPlausible } from '../chart/plausible';
import type { SizeChart } from '../chart/size-chart';
import { InputError } from '../errors';
import { excerpt } from '../table/tidy-text';
import { LENGTH_UNITS, UNIT_WORDS, fromMillimeters, toMillimeters, trimmed } from '../units';

/**
 * Throws InputError `measurement-doubtful` for a known measurement that is no adult's in the unit of the
 * list, with the unit in which it would be one. Whatever an adult can be is nobody's mistake.
 */
export function checkBody({ file, unit, rows }: SizeChart): void {
  for (const { name, known, values, cells, places } of rows) {
    const mm = values[0] ?? null;
    if (!known || mm === null || isPlausible(name, mm)) continue;
    const typed = fromMillimeters(mm, unit);
    const meant = LENGTH_UNITS.find(
      (other) => other !== unit && isPlausible(name, toMillimeters(typed, other)),
    );
    const { least, most } = boundsOf(name);
    const show = (bound: number): string => trimmed(fromMillimeters(bound, unit), 1);
    throw new InputError('measurement-doubtful', {
      what:
        `${name} is no adult's in ${UNIT_WORDS[unit]}` +
        (meant === undefined ? '' : `; in ${UNIT_WORDS[meant]} it would be`),
      allowed: `${show(least)} to ${show(most)} ${unit}`,
      got: excerpt(cells[0] ?? ''),
      place: { file, ...places[0], measurement: name },
    });
  }
}
