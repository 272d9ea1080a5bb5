/** Girths that show that a chart is in another unit than it says. */
import { InputError } from '../errors';
import type { LengthUnit } from '../units';
import { LENGTH_UNITS, UNIT_WORDS, fromMillimeters, toMillimeters, trimmed } from '../units';
import { isPlausible } from './plausible';
import type { MeasurementRow, SizeChart } from './size-chart';

/** Every chart has these two, and they part the units best. */
const TELLING: readonly string[] = ['waist_girth', 'hip_girth'];

/**
 * Throws `unit-contradicted` if some girth of the chart is no adult's in the unit stated, while
 * all of them would be in another. A chart that fits no unit better than its own is left alone here.
 */
export function checkGirthUnit(chart: SizeChart): void {
  const rows = chart.rows.filter(({ name }) => TELLING.includes(name));
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
  for (const [index, mm] of row.values.entries()) {
    if (mm === null) continue;
    const value = fromMillimeters(mm, stated);
    if (!isPlausible(row.name, toMillimeters(value, unit))) return { row, index, value };
  }
  return undefined;
}
