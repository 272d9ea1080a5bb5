/** Cells that are numbers but hardly the measurement they stand for, refused with what was meant. */
import { InputError } from '../errors';
import { excerpt } from '../table/tidy-text';
import { LIKELY_MEANING } from '../tolerance';
import { LENGTH_UNITS, UNIT_WORDS, fromMillimeters, toMillimeters, trimmed } from '../units';
import { farthestFromNeighbors } from './row-neighbors';
import { GIRTHS, boundsOf, isImpossible, isPlausible } from './plausible';
import type { MeasurementRow, SizeChart } from './size-chart';
import { placeOf } from './size-chart';

/**
 * Throws `measurement-doubtful` for a column of girths that are no body's, for a known measurement
 * that is no body's in any unit, and for one that lies far from its neighbors, with the cell, its
 * size, and what was probably meant. The sizes may still be in the order of the file.
 */
export function checkDoubtfulCells(chart: SizeChart): void {
  const rows = chart.rows.filter(({ known }) => known);
  chart.sizes.forEach((_, index) => refuseNoSize(chart, rows, index));
  for (const row of rows) {
    const doubt = farthestFromNeighbors(row.values, (mm) => !isPlausible(row.name, mm));
    row.values.forEach((mm, index) => {
      if (mm === null || !isImpossible(row.name, mm, chart.unit)) return;
      const { least, most } = boundsOf(row.name);
      const show = (bound: number) => trimmed(fromMillimeters(bound, chart.unit), 1);
      const girth = GIRTHS.includes(row.name);
      throw doubtful(chart, row, index, doubt?.index === index ? doubt.expected : undefined, {
        what: girth ? `is no adult's in ${unitWords()}` : 'is no length of a body or a garment',
        allowed: `${show(least)} to ${show(most)} ${chart.unit}`,
      });
    });
    if (doubt !== undefined)
      throw doubtful(chart, row, doubt.index, doubt.expected, {
        what: 'lies far from those of the sizes beside it',
        allowed: `about ${trimmed(fromMillimeters(doubt.expected, chart.unit), 1)} ${chart.unit}, by those sizes`,
      });
  }
}

function unitWords(): string {
  return LENGTH_UNITS.map((unit) => UNIT_WORDS[unit])
    .join(', ')
    .replace(/, (\w+)$/u, ' or $1');
}

/** Two girths that are no body's, under one heading, show that the heading names no size. */
function refuseNoSize(chart: SizeChart, rows: readonly MeasurementRow[], index: number): void {
  const cells = rows.flatMap((row) => {
    const mm = row.values[index];
    return GIRTHS.includes(row.name) && mm !== null && mm !== undefined ? [{ row, mm }] : [];
  });
  const [first] = cells;
  if (first === undefined || cells.length < 2) return;
  if (!cells.every(({ row, mm }) => isImpossible(row.name, mm, chart.unit))) return;
  throw new InputError('measurement-doubtful', {
    what:
      `"${chart.sizes[index] ?? ''}" stands where a size does, but none of its girths is an ` +
      `adult's in ${unitWords()}`,
    allowed: 'sizes with their body measurements, and nothing else beside them',
    got: cells.map(({ row }) => excerpt(row.cells[index] ?? '')).join(', '),
    place: placeOf(chart, first.row, index),
  });
}

function doubtful(
  chart: SizeChart,
  row: MeasurementRow,
  index: number,
  expected: number | undefined,
  { what, allowed }: { readonly what: string; readonly allowed: string },
): InputError {
  const typed = fromMillimeters(row.values[index] ?? NaN, chart.unit);
  const rounded = trimmed(typed, 3);
  // What is too small for three decimals is shown as it stands in the cell.
  const shown = rounded === '0' ? excerpt(row.cells[index] ?? '') : rounded;
  const meant =
    expected === undefined
      ? otherUnit(row.name, typed, chart)
      : likelyMeaning(
          typed,
          fromMillimeters(expected, chart.unit),
          chart,
          othersOf(row, index, chart),
        );
  return new InputError('measurement-doubtful', {
    what:
      `${row.name} of ${shown} ${chart.unit} ${what}` +
      (meant === undefined ? '' : ` (did you mean ${meant}?)`),
    allowed,
    got: excerpt(row.cells[index] ?? ''),
    place: placeOf(chart, row, index),
  });
}

/** What the other sizes have where a body can have it, in the unit of the chart. */
function othersOf({ name, values }: MeasurementRow, index: number, { unit }: SizeChart): number[] {
  return values.flatMap((mm, i) =>
    i === index || mm === null || !isPlausible(name, mm) ? [] : [fromMillimeters(mm, unit)],
  );
}

/**
 * The number that one slip makes of the one typed and that comes nearest to the expected one: a
 * point or a zero in the wrong place, two digits exchanged, another unit. Undefined if none is near. What was copied
 * from a sheet in another unit may stand in several cells, which spoil what is expected: it is held
 * against the `others` too.
 */
function likelyMeaning(
  typed: number,
  expected: number,
  { unit }: SizeChart,
  others: readonly number[],
): string | undefined {
  const powers = [-3, -2, -1, 1, 2, 3].map((power) => ({
    value: Number(`${typed}e${power}`),
    text: (value: number) => trimmed(value, 3),
    beside: [expected],
  }));
  const swapped = exchanged(trimmed(typed, 3)).map((digits) => ({
    value: Number(digits),
    text: () => digits,
    beside: [expected],
  }));
  const units = LENGTH_UNITS.filter((other) => other !== unit).map((other) => ({
    value: fromMillimeters(toMillimeters(typed, other), unit),
    text: (value: number) => `${trimmed(value, 3)}, which is ${trimmed(typed, 3)} ${other}`,
    beside: [expected, ...others],
  }));
  const [nearest] = [...powers, ...swapped, ...units]
    .map((reading) => ({
      ...reading,
      off: Math.min(...reading.beside.map((own) => Math.abs(reading.value - own) / own)),
    }))
    .filter(({ off }) => off <= LIKELY_MEANING)
    .sort((a, b) => a.off - b.off);
  return nearest?.text(nearest.value);
}

/** The number in the only other unit in which it may be the measurement; undefined if none is it. */
function otherUnit(name: string, typed: number, { unit }: SizeChart): string | undefined {
  const [found, ...others] = LENGTH_UNITS.filter(
    (other) => other !== unit && isPlausible(name, toMillimeters(typed, other)),
  );
  if (found === undefined || others.length > 0) return undefined;
  const value = fromMillimeters(toMillimeters(typed, found), unit);
  return `${trimmed(value, 1)}, which is ${trimmed(typed, 3)} ${found}`;
}

/** The number with each two neighboring digits exchanged. */
function exchanged(number: string): string[] {
  return [...number].flatMap((digit, i) => {
    const next = number.charAt(i + 1);
    if (!/\d\d/u.test(digit + next)) return [];
    return [number.slice(0, i) + next + digit + number.slice(i + 2)];
  });
}
