/** The spec as tables for a spreadsheet: numbers as numbers. */
import { roundTo } from '../grade/rounding';
import type { Deviation } from '../measure/sample';
import type { Spec, SpecRow } from '../measure/spec';
import { growthOf } from '../rule-sheet/moves-and-steps';
import { writtenCsv } from '../table/written-csv';
import { fromMillimeters, inchFraction, toMillimeters, trimmed } from '../units';

/** Decimals: a sixteenth of an inch exactly, and a tenth of a millimeter. */
const INCHES = 4;
const CENTIMETERS = 2;
const SIXTEENTH = toMillimeters(1 / 16, 'in');

function inches(mm: number): string {
  return trimmed(fromMillimeters(mm, 'in'), INCHES);
}

function centimeters(mm: number): string {
  return trimmed(fromMillimeters(mm, 'cm'), CENTIMETERS);
}

/** To the nearest sixteenth; `0 1/4` and not `1/4`, which spreadsheets take for a date. */
function fraction(mm: number): string {
  const text = inchFraction(roundTo(mm, SIXTEENTH), 16);
  return text.replace(/^(-?)(\d+\/)/u, '$10 $2');
}

/**
 * `spec.csv`: a row for each point of measure and size, in decimal inches, in inches to the nearest
 * sixteenth, and in centimeters; `step` is the growth from the size below.
 */
export function specTable({ rows, sizes, base }: Spec): string {
  const body = rows.flatMap((row) => {
    const steps = [undefined, ...growthOf(row.values)];
    const { minus, plus } = row.tolerance;
    return sizes.map((size, i) => {
      const value = row.values[i] ?? NaN;
      const step = steps[i];
      return [
        row.code,
        row.measure,
        row.how,
        row.taken,
        size,
        i === base ? 'base' : '',
        inches(value),
        fraction(value),
        centimeters(value),
        inches(minus),
        inches(plus),
        centimeters(minus),
        centimeters(plus),
        step === undefined ? '' : inches(step),
        step === undefined ? '' : centimeters(step),
        row.source,
      ];
    });
  });
  return writtenCsv([
    [
      ...['code', 'measure', 'how', 'taken', 'size', 'base', 'in', 'in_fraction', 'cm'],
      ...['minus_in', 'plus_in', 'minus_cm', 'plus_cm', 'step_in', 'step_cm', 'source'],
    ],
    ...body,
  ]);
}

/**
 * `grade-sheet.csv`: three rows for each point of measure, decimal inches, inches to the nearest
 * sixteenth and centimeters, with a column a size; the base is marked in its heading. Fractions are
 * words to a spreadsheet, the other rows are numbers.
 */
export function gradeSheet({ rows, sizes, base }: Spec): string {
  const shown = (row: SpecRow, unit: string, show: (mm: number) => string): readonly string[] => {
    const growths = growthOf(row.values);
    return [
      row.code,
      row.measure,
      row.how,
      row.taken,
      unit,
      show(row.tolerance.minus),
      show(row.tolerance.plus),
      ...[Math.min, Math.max].map((end) => (growths.length === 0 ? '' : show(end(...growths)))),
      ...row.values.map(show),
    ];
  };
  return writtenCsv([
    [
      ...['code', 'measure', 'how', 'taken', 'unit'],
      ...['tolerance_minus', 'tolerance_plus', 'step_least', 'step_most'],
      ...sizes.map((size, i) => (i === base ? `${size} (base)` : size)),
    ],
    ...rows.flatMap((row) => [
      shown(row, 'in', inches),
      shown(row, 'in_fraction', fraction),
      shown(row, 'cm', centimeters),
    ]),
  ]);
}

/** `sample.csv`: a measured sample against the spec, passed or out and by how much, and when where that is known. */
export function sampleTable(found: readonly Deviation[], { sizes }: Spec): string {
  const times = (['date', 'wash'] as const).filter((name) =>
    found.some(({ when }) => when[name] !== undefined),
  );
  const body = found.map(({ row, size, value, off, beyond, when }) => [
    row.code,
    row.measure,
    sizes[size],
    ...[row.values[size] ?? NaN, value, off, beyond].map(inches),
    ...[row.values[size] ?? NaN, value, off, beyond].map(centimeters),
    beyond > 0 ? 'out' : 'pass',
    ...times.map((name) => String(when[name] ?? '')),
  ]);
  const columns = ['spec', 'measured', 'off', 'beyond'];
  return writtenCsv([
    [
      ...['code', 'measure', 'size'],
      ...columns.map((name) => `${name}_in`),
      ...columns.map((name) => `${name}_cm`),
      'result',
      ...times,
    ],
    ...body,
  ]);
}
