/** A sewn sample against its spec: what is out of tolerance, and whether base or grade is to blame. */
import { InputError } from '../errors';
import { matchName, matchSize, namesMeant } from '../table/name-match';
import { wantedNames, wantedSizes } from '../table/near-names';
import { unitOrUsual } from '../table/statements';
import { refuseCountingNotes } from '../table/note-cells';
import type { TypedCell } from '../table/typed-table';
import { lengthCell, readTypedTable } from '../table/typed-table';
import type { UnreadText } from '../table/unread';
import { unreadIn } from '../table/unread';
import type { LengthUnit } from '../units';
import type { Spec, SpecRow } from './spec';
import { ARITHMETIC } from '../tolerance';

/** One measurement of a sample. */
export interface SampleMeasure {
  readonly row: SpecRow;
  /** Place of the size in the spec. */
  readonly size: number;
  /** mm, stated like the spec's value. */
  readonly value: number;
}

/** A sample measured at one point in one size; positive where the sample is larger. */
export interface Deviation extends SampleMeasure {
  readonly off: number;
  /** mm beyond the tolerance, zero or more. */
  readonly beyond: number;
}

/** Deviations of one point of measure as a straight line over its growth from the base. */
export interface SampleFit {
  readonly row: SpecRow;
  /** mm that every size is off: the base. */
  readonly constant: number;
  /** mm more for each mm of growth: the grade. Undefined where one size, or no growth, shows none. */
  readonly slope: number | undefined;
  /** mm, root mean square of what the line leaves. */
  readonly rest: number;
  /** How many sizes were measured. */
  readonly sizes: number;
}

/**
 * Reads a measured sample: `measure` (code or name), `size`, `value`; `usual` is its unit where it states
 * none. Throws InputError
 * `measure-unknown`, `size-unknown` and what cells throw.
 */
export function readSample(
  text: string,
  file: string,
  spec: Spec,
  usual: LengthUnit | undefined,
): { readonly values: readonly SampleMeasure[]; readonly unread: readonly UnreadText[] } {
  const table = readTypedTable<'measure' | 'size' | 'value' | 'note'>(
    text,
    file,
    ['measure', 'size', 'value'],
    ['note'],
  );
  const unit = unitOrUsual(table, table.units.values(), usual);
  refuseCountingNotes(table, unit);
  const values = table.rows.map((row) => {
    const [measure, size] = [row('measure'), row('size')];
    const found = measureNamed(measure, spec);
    const label = matchSize(size.text, spec.sizes);
    if (label === undefined) {
      throw new InputError('size-unknown', {
        what: 'the spec has no such size',
        ...wantedSizes(size.text, spec.sizes),
        got: size.text,
        place: size.place,
      });
    }
    const place = spec.sizes.indexOf(label);
    return { row: found, size: place, value: lengthCell(row('value'), unit) };
  });
  return { values, unread: unreadIn(table, []) };
}

/** By its code, else by its name. Throws InputError `measure-unknown`, with the codes for several. */
function measureNamed(cell: TypedCell, { rows }: Spec): SpecRow {
  const codes = rows.map(({ code }) => code);
  const byCode = matchName(cell.text, codes);
  const meant = namesMeant(
    cell.text,
    rows.map(({ measure }) => measure),
  );
  const [found, ...others] = rows.filter(({ code, measure }) =>
    byCode === undefined ? meant.includes(measure) : code === byCode,
  );
  if (found !== undefined && others.length === 0) return found;
  const isUnknown = found === undefined;
  throw new InputError('measure-unknown', {
    what: isUnknown
      ? 'the spec has no such point of measure'
      : 'more than one point of measure can be meant',
    ...(isUnknown
      ? wantedNames(
          cell.text,
          rows.flatMap(({ code, measure }) => [measure, code]),
        )
      : {
          allowed: [found, ...others].map(({ code, measure }) => `${code} (${measure})`).join(', '),
        }),
    got: cell.text,
    place: cell.place,
  });
}

/** Holds each measurement against its value and tolerance. */
export function deviations(sample: readonly SampleMeasure[]): readonly Deviation[] {
  return sample.map((measured) => {
    const { row, size, value } = measured;
    const off = value - (row.values[size] ?? NaN);
    const allowed = off < 0 ? row.tolerance.minus : row.tolerance.plus;
    return { ...measured, off, beyond: Math.max(0, Math.abs(off) - allowed - ARITHMETIC) };
  });
}

/** Fits each point of measure by least squares. */
export function sampleFits(found: readonly Deviation[], { base }: Spec): readonly SampleFit[] {
  const rows = [...new Set(found.map(({ row }) => row))];
  return rows.map((row) => {
    const own = found.filter((deviation) => deviation.row === row);
    const growth = own.map(({ size }) => (row.values[size] ?? NaN) - (row.values[base] ?? NaN));
    const off = own.map((deviation) => deviation.off);
    const [meanGrowth, meanOff] = [mean(growth), mean(off)];
    const spread = growth.reduce((sum, x) => sum + (x - meanGrowth) ** 2, 0);
    const shared = growth.reduce(
      (sum, x, i) => sum + (x - meanGrowth) * ((off[i] ?? NaN) - meanOff),
      0,
    );
    const slope = spread > ARITHMETIC ? shared / spread : undefined;
    const constant = meanOff - (slope ?? 0) * meanGrowth;
    const rest = off.map((y, i) => y - constant - (slope ?? 0) * (growth[i] ?? NaN));
    const sizes = new Set(own.map(({ size }) => size)).size;
    return { row, constant, slope, rest: Math.sqrt(mean(rest.map((r) => r * r))), sizes };
  });
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
