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
import { ARITHMETIC, OUTLYING, TAPE_READING } from '../tolerance';
import { grouped } from '../lists/grouped';
import type { Occasion } from './occasion';
import { byTime, occasionWords, readOccasion } from './occasion';

/** One measurement of a sample. */
export interface SampleMeasure {
  readonly row: SpecRow;
  /** Place of the size in the spec. */
  readonly size: number;
  /** mm, stated like the spec's value. */
  readonly value: number;
  readonly when: Occasion;
}

/** A sample measured at one point in one size; positive where the sample is larger. */
export interface Deviation extends SampleMeasure {
  readonly off: number;
  /** mm beyond the tolerance, zero or more. */
  readonly beyond: number;
}

/** Deviations of one point of measure, measured at one time, as a straight line over its growth from the base. */
export interface SampleFit {
  readonly row: SpecRow;
  readonly when: Occasion;
  /** mm that every size is off: the base. */
  readonly constant: number;
  /** mm more for each mm of growth: the grade. Undefined where one size, or no growth, shows none. */
  readonly slope: number | undefined;
  /** mm, root mean square of what the line leaves. */
  readonly rest: number;
  /** How many sizes the line goes by. */
  readonly sizes: number;
  /** A size that alone lies off the line of all others, which is that of the fit then, and mm by which. */
  readonly outlier?: { readonly size: number; readonly off: number };
}

/**
 * Reads a measured sample: `measure` (code or name), `size`, `value`, and where it was measured several times
 * `wash` or `date`; `usual` is its unit where it states none. Throws InputError `measure-unknown`,
 * `size-unknown` and what cells throw.
 */
export function readSample(
  text: string,
  file: string,
  spec: Spec,
  usual: LengthUnit | undefined,
): { readonly values: readonly SampleMeasure[]; readonly unread: readonly UnreadText[] } {
  const table = readTypedTable<'measure' | 'size' | 'value' | 'wash' | 'date' | 'note'>(
    text,
    file,
    ['measure', 'size', 'value'],
    ['wash', 'date', 'note'],
  );
  const { columns } = table;
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
    const when = readOccasion(
      columns.has('wash') ? row('wash') : undefined,
      columns.has('date') ? row('date') : undefined,
    );
    return { row: found, size: place, value: lengthCell(row('value'), unit), when };
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

/** Fits each point of measure at each time by least squares, the earliest first. */
export function sampleFits(found: readonly Deviation[], { base }: Spec): readonly SampleFit[] {
  const groups = grouped(found, ({ row, when }) => JSON.stringify([row.code, occasionWords(when)]));
  const fits = [...groups.values()].flatMap((own) => {
    const [first] = own;
    return first === undefined ? [] : [fitOf(own, first, base)];
  });
  return fits.toSorted((a, b) => (a.row === b.row ? byTime(a.when, b.when) : 0));
}

function fitOf(own: readonly Deviation[], { row, when }: SampleMeasure, base: number): SampleFit {
  const outlier = outlierOf(own, base);
  const kept = own.filter(({ size }) => size !== outlier?.size);
  const line = lineOf(kept, base);
  return {
    ...{ row, when, ...line },
    rest: Math.sqrt(mean(kept.map((one) => missBy(one, line, base) ** 2))),
    sizes: new Set(kept.map(({ size }) => size)).size,
    ...(outlier === undefined ? {} : { outlier }),
  };
}

type Line = Pick<SampleFit, 'constant' | 'slope'>;

function growthOf({ row, size }: SampleMeasure, base: number): number {
  return (row.values[size] ?? NaN) - (row.values[base] ?? NaN);
}

function lineOf(own: readonly Deviation[], base: number): Line {
  const growth = own.map((one) => growthOf(one, base));
  const off = own.map((deviation) => deviation.off);
  const [meanGrowth, meanOff] = [mean(growth), mean(off)];
  const spread = growth.reduce((sum, x) => sum + (x - meanGrowth) ** 2, 0);
  const shared = growth.reduce(
    (sum, x, i) => sum + (x - meanGrowth) * ((off[i] ?? NaN) - meanOff),
    0,
  );
  const slope = spread > ARITHMETIC ? shared / spread : undefined;
  return { constant: meanOff - (slope ?? 0) * meanGrowth, slope };
}

/** mm by which a deviation lies off a line. */
function missBy(one: Deviation, { constant, slope = 0 }: Line, base: number): number {
  return one.off - constant - slope * growthOf(one, base);
}

/** Sizes without which nobody can tell which of them lies off the line of the others. */
const FEWEST = 4;

/**
 * The size without which all others lie nearest to a line, where it is off that line by more than its
 * tolerance and clearly more than any of them.
 */
function outlierOf(own: readonly Deviation[], base: number): SampleFit['outlier'] {
  const sizes = [...new Set(own.map(({ size }) => size))];
  if (sizes.length < FEWEST) return undefined;
  const tried = sizes.map((size) => {
    const [alone, others] = [true, false].map((isOwn) =>
      own.filter((one) => (one.size === size) === isOwn),
    ) as [Deviation[], Deviation[]];
    const line = lineOf(others, base);
    const off = mean(alone.map((one) => missBy(one, line, base)));
    const rest = Math.max(...others.map((one) => Math.abs(missBy(one, line, base))));
    return { size, off, rest };
  });
  const { size, off, rest } = tried.reduce((a, b) => (b.rest < a.rest ? b : a));
  const { minus = 0, plus = 0 } = own[0]?.row.tolerance ?? {};
  const least = Math.max(off < 0 ? minus : plus, OUTLYING * Math.max(rest, TAPE_READING));
  return Math.abs(off) > least + ARITHMETIC ? { size, off } : undefined;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
