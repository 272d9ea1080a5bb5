/** Girths that show that a chart is in another unit than it says. */
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { LENGTH_UNITS, UNIT_WORDS, fromMillimeters, toMillimeters, trimmed } from '../units';
import type { MeasurementRow, SizeChart } from './size-chart';

/** mm. From the smallest to the largest adult body, with room (surveys and published tables). */
const ADULT_GIRTHS = {
  waist_girth: { least: 450, most: 1750 },
  hip_girth: { least: 550, most: 1900 },
} as const;

type AdultGirth = keyof typeof ADULT_GIRTHS;

/**
 * Throws `unit-contradicted` if some girth of the chart is no adult's in the unit stated, while
 * all of them would be in another. A chart that fits no unit better than its own is left alone: it
 * may be a child's, and only its owner can tell.
 */
export function checkGirthUnit(chart: SizeChart): void {
  const rows = chart.rows.filter(({ name }) => name in ADULT_GIRTHS);
  const odd = rows.flatMap((row) => oddGirth(row, chart.unit, chart.unit) ?? [])[0];
  if (odd === undefined) return;
  const looksLike = LENGTH_UNITS.find((unit) =>
    rows.every((row) => oddGirth(row, chart.unit, unit) === undefined),
  );
  if (looksLike === undefined) return;

  const { row, index, value } = odd;
  throw new InputError('unit-contradicted', {
    what: `the chart says ${UNIT_WORDS[chart.unit]}, but its girths are an adult's only if they are ${UNIT_WORDS[looksLike]}`,
    allowed: `the unit in which the numbers are; \`# unit: ${looksLike}\` would fit`,
    got: `${trimmed(value, 3)} ${chart.unit}`,
    place: {
      file: chart.file,
      ...row.places[index],
      size: chart.sizes[index] ?? '',
      measurement: row.name,
    },
  });
}

/** The first girth of a row that is no adult's if its number in unit `stated` is read in `unit`. */
function oddGirth(row: MeasurementRow, stated: LengthUnit, unit: LengthUnit) {
  const { least, most } = ADULT_GIRTHS[row.name as AdultGirth];
  for (const [index, mm] of row.values.entries()) {
    if (mm === null) continue;
    const value = fromMillimeters(mm, stated);
    const read = toMillimeters(value, unit);
    if (read < least || read > most) return { row, index, value };
  }
  return undefined;
}
