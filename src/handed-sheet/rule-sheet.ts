/** A sheet of grade rules as somebody handed it in: its cells with their places, nothing judged. */
import type { Place } from '../errors';
import type { LengthUnit } from '../units';

/** x runs along the waist, y along the center line. */
export type Axis = 'x' | 'y';

/** A move from the base size, or a step from the neighbor on the base's side. */
export type Form = 'move' | 'step';

/** One number of a sheet, or the blank where it should stand. */
export interface RuleCell {
  readonly piece: string;
  readonly point: string;
  readonly size: string;
  readonly axis: Axis;
  readonly form: Form;
  /** Millimeters, signed as typed; undefined where the cell is blank. */
  readonly mm: number | undefined;
  readonly place: Place;
}

export interface RuleSheet {
  /** Name for messages, usually the file's. */
  readonly file: string;
  /** Unit of the columns. */
  readonly unit: LengthUnit;
  /** What comment lines such as `# zero: side_hip` state, by their lowercase first word. */
  readonly statements: ReadonlyMap<string, string>;
  readonly cells: readonly RuleCell[];
}

/** Size labels in the order in which the sheet first names them. */
export function sheetSizes({ cells }: RuleSheet): readonly string[] {
  return [...new Set(cells.map(({ size }) => size))];
}
