/** A row of a rule sheet, whichever way its sizes run. */
import type { TypedCell } from '../table/typed-table';
import type { LengthUnit } from '../units';
import type { Axis, Form } from './rule-sheet';

/** A cell for a number, with its size; the size is empty where it is for all of them. */
export interface RuleEntry {
  readonly size: TypedCell;
  readonly axis: Axis;
  readonly form: Form;
  readonly cell: TypedCell;
}

/** A row that defines a named rule has no point; one that uses it has a point and no numbers. */
export interface RuleRow {
  readonly piece: TypedCell;
  readonly point: TypedCell;
  readonly rule: TypedCell;
  readonly entries: readonly RuleEntry[];
  /** The first number or size that is typed in the row. */
  readonly typed: TypedCell | undefined;
}

/** The rows of a sheet, and the units behind the labels in them. */
export interface RuleRows {
  readonly rows: readonly RuleRow[];
  readonly units: readonly LengthUnit[];
}

/** Tells a cell that says nothing. */
export type Blank = (cell: TypedCell) => boolean;
