/** The rows of a rule sheet with one size a column, and the axis of each row named. */
import { InputError } from '../errors';
import { snakeCase } from '../table/label';
import type { Statements } from '../table/statements';
import { statedDown } from '../table/statements';
import { excerpt } from '../table/tidy-text';
import type { TypedCell, TypedTable } from '../table/typed-table';
import type { Column } from './rule-columns';
import { axisNamed, DOWN, LAYOUTS, MOVE_COLUMNS } from './rule-columns';
import type { Blank, RuleRow, RuleRows } from './rule-row';

/** Columns that only a long sheet has. */
const LONG: readonly Column[] = [
  'size',
  ...(Object.keys(MOVE_COLUMNS) as (keyof typeof MOVE_COLUMNS)[]),
  'rule_x',
  'rule_y',
];

/**
 * The rows below the header. Throws InputError `sheet-malformed` for an axis that is not known, and
 * for a sheet that is long and wide at once.
 */
export function wideRows(table: TypedTable<Column>, isBlank: Blank): RuleRows {
  const long = LONG.find((name) => table.columns.has(name));
  if (long !== undefined) {
    throw new InputError('sheet-malformed', {
      what: `the sheet has a column axis and a column ${long}`,
      allowed: LAYOUTS,
      got: [...table.columns].join(', '),
      place: { file: table.file },
    });
  }
  const lines = table.rows.map((row) => {
    const numbers = table.others.map((size) => ({ size, cell: row(size.place.column ?? 0) }));
    const typed = numbers.map(({ cell }) => cell).find((cell) => !isBlank(cell));
    const uses = row('point').text !== '' && row('rule').text !== '' && row('axis').text === '';
    const label = uses ? undefined : labeled(row('axis'), table);
    const names = { piece: row('piece'), point: row('point'), rule: row('rule'), typed };
    const entries =
      label === undefined ? [] : numbers.map((number) => ({ ...number, ...label.move }));
    return { row: { ...names, entries } satisfies RuleRow, unit: label?.unit };
  });
  return {
    rows: lines.map(({ row }) => row),
    units: lines.flatMap(({ unit }) => unit ?? []),
  };
}

function labeled({ text, place }: TypedCell, table: Statements) {
  const label = axisNamed(text);
  const isAgainst = snakeCase(text) === DOWN && statedDown(table) < 0;
  if (label !== undefined && !isAgainst) return label;
  throw new InputError('sheet-malformed', {
    what: isAgainst
      ? 'the axis of a row is called down, where y runs up'
      : 'the axis of a row is not known',
    allowed:
      'dx, dy, x, y, across, down, or step_dx, step_dy, with the unit behind it or in a line "# unit: in"',
    got: excerpt(text),
    place,
  });
}
