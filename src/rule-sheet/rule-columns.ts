/** The columns that rule sheets have, and the names of axes in a column `axis`. */
import { snakeCase, splitLabel } from '../table/label';
import { isNegated } from '../table/typed-table';
import type { LengthUnit } from '../units';
import type { Axis, Form } from './rule-sheet';

/** A column, or a row, of moves or steps along one axis. */
export interface MoveColumn {
  readonly axis: Axis;
  readonly form: Form;
}

/** The columns by their names without a unit: moves from the base, and steps from size to size. */
export const MOVE_COLUMNS = {
  dx: { axis: 'x', form: 'move' },
  dy: { axis: 'y', form: 'move' },
  step_dx: { axis: 'x', form: 'step' },
  step_dy: { axis: 'y', form: 'step' },
} as const satisfies Readonly<Record<string, MoveColumn>>;

/** The name of an axis that says which way it counts. */
export const DOWN = 'down';

/** In a column `axis` the letter alone will do; as a column of its own it would be a place. */
const AXIS_NAMES: Readonly<Record<string, MoveColumn>> = {
  ...MOVE_COLUMNS,
  x: MOVE_COLUMNS.dx,
  y: MOVE_COLUMNS.dy,
  step_x: MOVE_COLUMNS.step_dx,
  step_y: MOVE_COLUMNS.step_dy,
  h: MOVE_COLUMNS.dx,
  v: MOVE_COLUMNS.dy,
  horizontal: MOVE_COLUMNS.dx,
  vertical: MOVE_COLUMNS.dy,
  across: MOVE_COLUMNS.dx,
  [DOWN]: MOVE_COLUMNS.dy,
};

/** The columns that are no sizes, in lower case with underscores. */
export const COLUMNS = [
  ...(['piece', 'point', 'rule', 'size', 'axis', 'note'] as const),
  ...(['dx', 'dy', 'step_dx', 'step_dy', 'rule_x', 'rule_y'] as const),
] as const;
/** A column with a name that is no size. */
export type Column = (typeof COLUMNS)[number];

/** Both layouts in words, for refusals. */
export const LAYOUTS =
  'columns piece, point, size, dx_in, dy_in (step_dx_in, step_dy_in), ' +
  'or point, axis and one column a size';

/** What a label such as `step_dx (cm)` says in a column `axis`, and the unit if there is one. */
export function axisNamed(
  text: string,
): { readonly move: MoveColumn; readonly unit?: LengthUnit } | undefined {
  if (isNegated(text)) return undefined;
  const { text: label, unit } = splitLabel(text);
  const [, move] = Object.entries(AXIS_NAMES).find(([own]) => own === snakeCase(label)) ?? [];
  if (move === undefined) return undefined;
  return { move, ...(unit === undefined ? {} : { unit }) };
}
