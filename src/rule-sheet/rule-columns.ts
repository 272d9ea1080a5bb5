/** The columns of moves that rule sheets have, and the one unit of them. */
import { snakeCase, splitLabel } from '../table/label';
import { excerpt } from '../table/tidy-text';
import { InputError } from '../errors';
import type { Table } from '../table/typed-table';
import { statedUnit } from '../table/typed-table';
import type { LengthUnit } from '../units';
import type { Axis, Form } from './rule-sheet';

/** What a column of numbers counts. */
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

/** The layouts that are read, in words for a refusal. */
export const LAYOUTS =
  'columns piece, point, size, dx_in, dy_in (step_dx_in, step_dy_in), ' +
  'or point, axis and one column a size';

/** What a label such as `step_dx (cm)` says: its column of moves, and the unit if there is one. */
export function moveLabel(
  text: string,
): { readonly move: MoveColumn; readonly unit?: LengthUnit } | undefined {
  const { text: label, unit } = splitLabel(text);
  const name = Object.entries(MOVE_COLUMNS).find(([own]) => own === snakeCase(label));
  if (name === undefined) return undefined;
  return { move: name[1], ...(unit === undefined ? {} : { unit }) };
}

/**
 * The unit that a sheet states (`# unit: in`) or that its labels name. Throws InputError
 * `unit-missing`, or `unit-contradicted` where they name more than one.
 */
export function sheetUnit(
  sheet: Pick<Table<string>, 'comments' | 'file'>,
  labeled: Iterable<LengthUnit>,
): LengthUnit {
  const named = new Set(labeled);
  const stated = statedUnit(sheet);
  if (stated !== undefined) named.add(stated);
  const [unit, other] = named;
  if (unit !== undefined && other === undefined) return unit;
  const { file } = sheet;
  throw new InputError(unit === undefined ? 'unit-missing' : 'unit-contradicted', {
    what:
      unit === undefined ? 'the sheet does not say its unit' : 'the sheet names more than one unit',
    allowed: 'one unit, by columns such as dx_in or dx_cm, or by a line "# unit: in"',
    got: excerpt([...named].join(', ')),
    place: { file },
  });
}
