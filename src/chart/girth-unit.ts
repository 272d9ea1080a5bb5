/** Numbers that show that a chart, or one of its rows, is in another unit than it says. */
import { InputError } from '../errors';
import { excerpt } from '../table/tidy-text';
import type { LengthUnit } from '../units';
import { LENGTH_UNITS, UNIT_WORDS, fromMillimeters, toMillimeters, trimmed } from '../units';
import { boundsOf, isPlausible } from './plausible';
import type { MeasurementRow, SizeChart } from './size-chart';
import { placeOf } from './size-chart';

/** Every chart has these two, and they part the units best. */
const TELLING: readonly string[] = ['waist_girth', 'hip_girth'];

/**
 * Throws `unit-contradicted` if some girth of the chart is no adult's in the unit stated, while
 * all of them would be in another; and if one known row by itself is an adult's in another unit
 * only, as where it was copied from a sheet in inches. What fits no unit better than its own is left
 * alone here.
 */
export function checkGirthUnit(chart: SizeChart): void {
  refuseChart(chart);
  for (const row of chart.rows) if (row.known) refuseRow(chart, row);
}

function refuseChart(chart: SizeChart): void {
  const rows = chart.rows.filter(({ name }) => TELLING.includes(name));
  const odd = rows.flatMap((row) =>
    oddCells(row, chart.unit, chart.unit).map((cell) => ({ row, ...cell })),
  )[0];
  if (odd === undefined) return;
  const looksLike = LENGTH_UNITS.find((unit) =>
    rows.every((row) => oddCells(row, chart.unit, unit).length === 0),
  );
  if (looksLike === undefined) return;

  const { row, index, typed } = odd;
  throw new InputError('unit-contradicted', {
    what: `the chart says ${UNIT_WORDS[chart.unit]}, but its girths are an adult's only if they are ${UNIT_WORDS[looksLike]}`,
    allowed: `the unit in which the numbers are; \`# unit: ${looksLike}\` would fit${halvesWords(chart, rows)}`,
    got: `${trimmed(typed, 3)} ${chart.unit}`,
    place: placeOf(chart, row, index),
  });
}

/** Charts of garments have half of each girth, which in centimeters looks like inches. */
function halvesWords({ unit }: SizeChart, rows: readonly MeasurementRow[]): string {
  const areHalves = rows.every(({ name, values }) =>
    values.every((mm) => mm === null || isPlausible(name, 2 * mm)),
  );
  return areHalves ? `; or, if these are half girths in ${UNIT_WORDS[unit]}, the whole ones` : '';
}

/** Most of a row no adult's in the chart's unit, and all that is odd an adult's in another. */
function refuseRow(chart: SizeChart, row: MeasurementRow): void {
  const { unit } = chart;
  const odd = oddCells(row, unit, unit);
  const [first] = odd;
  const known = row.values.filter((mm) => mm !== null);
  if (first === undefined || 2 * odd.length <= known.length) return;
  const meant = LENGTH_UNITS.find((other) =>
    odd.every(({ typed }) => isPlausible(row.name, toMillimeters(typed, other))),
  );
  if (meant === undefined) return;

  const inUnit = (typed: number) =>
    trimmed(fromMillimeters(toMillimeters(typed, meant), unit), unit === 'mm' ? 1 : 2);
  const { least, most } = boundsOf(row.name);
  const bound = (mm: number) => trimmed(fromMillimeters(mm, unit), 1);
  throw new InputError('unit-contradicted', {
    what:
      `the chart says ${UNIT_WORDS[unit]}, but its row ${row.name} is a body's or a garment's only ` +
      `if it is in ${UNIT_WORDS[meant]} (did you mean ${inUnit(first.typed)} ${unit}, which is ` +
      `${trimmed(first.typed, 3)} ${meant}?)`,
    allowed: `${row.name} from ${bound(least)} to ${bound(most)} ${unit}`,
    got: odd.map(({ index }) => excerpt(row.cells[index] ?? '')).join(', '),
    place: placeOf(chart, row, first.index),
  });
}

/** The cells of a row that are no adult's if their numbers in unit `stated` are read in `unit`. */
function oddCells(row: MeasurementRow, stated: LengthUnit, unit: LengthUnit) {
  return row.values.flatMap((mm, index) => {
    if (mm === null) return [];
    const typed = fromMillimeters(mm, stated);
    return isPlausible(row.name, toMillimeters(typed, unit)) ? [] : [{ index, typed }];
  });
}
