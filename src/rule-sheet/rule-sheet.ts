/** A sheet of grade rules as somebody typed it: its cells with their places, nothing judged. */
import type { SaidLine } from '../table/said-line';
import type { Statements } from '../table/statements';
import type { Place } from '../errors';
import type { LengthUnit } from '../units';

/** x runs along the waist, or along the reference line of a piece; y square to it. */
export type Axis = 'x' | 'y';

/** A move from the base size, or a step from the neighbor on the base's side. */
export type Form = 'move' | 'step';

/** Where a cell stands, and where its piece, its point and its size are named. */
export interface CellPlaces {
  readonly cell: Place;
  readonly piece: Place;
  readonly point: Place;
  readonly size: Place;
}

/** What a cell says: a number, a formula, or nothing where it is blank. */
export interface CellValue {
  /** As typed. */
  readonly text: string;
  /** Millimeters, signed as typed; undefined where the cell is blank or a formula. */
  readonly mm: number | undefined;
  /** `1/4 waist_girth`: a share of what the chart grows by. */
  readonly formula?: string;
}

/** One number of a sheet, or the blank where it should stand. */
export interface RuleCell extends CellValue {
  /** Names as the pattern has them; both empty in the definition of a named rule. */
  readonly piece: string;
  readonly point: string;
  /** Empty for one step, or one formula, that holds in every size. */
  readonly size: string;
  readonly axis: Axis;
  readonly form: Form;
  /** True where a formula gives the step from the size toward the base instead of to the size. */
  readonly reversed: boolean;
  readonly places: CellPlaces;
}

/** A rule sheet as somebody typed it: its cells with their places, whatever its layout. */
export interface RuleSheet extends Statements {
  /** The cells of its column for notes. */
  readonly notes: readonly SaidLine[];
  /** Unit of the columns. */
  readonly unit: LengthUnit;
  /** The sizes that are known or, in the order of the file, listed; then the base may be missing. */
  readonly sizes: readonly string[];
  /** Whether a chart or `# sizes: 8, 10, 12` says them. */
  readonly sizesKnown: boolean;
  /** The cells of all points, also of those that use a named rule. */
  readonly cells: readonly RuleCell[];
  /** The cells of each named rule. */
  readonly named: ReadonlyMap<string, readonly RuleCell[]>;
}

/** True where a cell says something. */
export function isFilled({ mm, formula }: CellValue): boolean {
  return mm !== undefined || formula !== undefined;
}
