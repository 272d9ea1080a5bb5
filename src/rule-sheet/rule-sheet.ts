/** A sheet of grade rules as somebody handed it in: its cells with their places, nothing judged. */
import type { SheetComment } from '../table/sheet';
import type { Place } from '../errors';
import type { LengthUnit } from '../units';

/** x runs along the waist, y along the center line. */
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

/** One number of a sheet, or the blank where it should stand. */
export interface RuleCell {
  readonly piece: string;
  readonly point: string;
  /** Empty for one step, or one formula, that holds in every size. */
  readonly size: string;
  readonly axis: Axis;
  readonly form: Form;
  /** Millimeters, signed as typed; undefined where the cell is blank or a formula. */
  readonly mm: number | undefined;
  /** `1/4 waist_girth`: a share of what the chart grows by. */
  readonly formula?: string;
  readonly places: CellPlaces;
}

/** A sheet as typed; its cells are in the order of the file, in mm. */
export interface RuleSheet {
  /** Name for messages, usually the file's. */
  readonly file: string;
  /** Unit of the columns. */
  readonly unit: LengthUnit;
  /** Lines such as `# zero: side_hip`. */
  readonly comments: readonly SheetComment[];
  readonly cells: readonly RuleCell[];
}
