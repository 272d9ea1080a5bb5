/** The rows of a rule sheet with one size a row, the columns of grade-rules.csv. */
import { InputError } from '../errors';
import type { TypedCell, TypedRow, TypedTable } from '../table/typed-table';
import { excerpt } from '../table/tidy-text';
import type { Column } from './rule-columns';
import { COLUMNS, MOVE_COLUMNS } from './rule-columns';
import type { Blank, RuleEntry, RuleRow, RuleRows } from './rule-row';
import type { Axis } from './rule-sheet';

const AXES = {
  x: { numbers: ['dx', 'step_dx'], formula: 'rule_x' },
  y: { numbers: ['dy', 'step_dy'], formula: 'rule_y' },
} as const;

/** The rows below the header. Throws InputError `column-unknown` for a column that is no rule's. */
export function longRows(table: TypedTable<Column>, isBlank: Blank): RuleRows {
  const [unknown] = table.others;
  if (unknown !== undefined) {
    throw new InputError('column-unknown', {
      what: 'a column is not known',
      allowed: COLUMNS.join(', '),
      got: excerpt(unknown.text),
      place: unknown.place,
    });
  }
  const usual = { x: usualColumn(table, 'x', isBlank), y: usualColumn(table, 'y', isBlank) };
  const rows = table.rows.map((row): RuleRow => {
    const typed = typedCells(row, isBlank);
    const entries = (['x', 'y'] as const).flatMap((axis) =>
      axisEntries(row, axis, usual[axis], isBlank),
    );
    return { piece: row('piece'), point: row('point'), rule: row('rule'), entries, typed };
  });
  return { rows, units: [] };
}

/** The numbers of one axis; its formula only where no number stands, else it explains the number. */
function axisEntries(
  row: TypedRow<Column>,
  axis: Axis,
  usual: keyof typeof MOVE_COLUMNS | undefined,
  isBlank: Blank,
): readonly RuleEntry[] {
  const size = row('size');
  const { numbers, formula } = AXES[axis];
  const filled = numbers.filter((name) => !isBlank(row(name)));
  if (filled.length === 0 && !isBlank(row(formula))) {
    return [{ size, axis, form: 'move', cell: row(formula) }];
  }
  const names = filled.length > 0 || usual === undefined ? filled : [usual];
  return names.map((name) => ({ size, ...MOVE_COLUMNS[name], cell: row(name) }));
}

/** In which column a blank of this axis should be filled: the one that is used, or else is there. */
function usualColumn(
  table: TypedTable<Column>,
  axis: Axis,
  isBlank: Blank,
): keyof typeof MOVE_COLUMNS | undefined {
  const there = AXES[axis].numbers.filter((name) => table.columns.has(name));
  return there.find((name) => table.rows.some((row) => !isBlank(row(name)))) ?? there[0];
}

function typedCells(row: TypedRow<Column>, isBlank: Blank): TypedCell | undefined {
  const names = ['size', ...AXES.x.numbers, ...AXES.y.numbers, 'rule_x', 'rule_y'] as const;
  return names.map((name) => row(name)).find((cell) => !isBlank(cell));
}
