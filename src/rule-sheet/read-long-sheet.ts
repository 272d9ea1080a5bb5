/** A rule sheet with one size a row, the columns of grade-rules.csv. */
import { InputError } from '../errors';
import type { TableCell, TableRow } from '../table/typed-table';
import { readTable } from '../table/typed-table';
import type { LengthUnit } from '../units';
import { readMove, readName } from './read-cell';
import { MOVE_COLUMNS, sheetUnit } from './rule-columns';
import type { RuleCell, RuleSheet } from './rule-sheet';

const MOVES = ['dx', 'dy', 'step_dx', 'step_dy'] as const;
const FORMULAS = [
  ['x', 'rule_x'],
  ['y', 'rule_y'],
] as const;
type Column =
  (typeof MOVES)[number] | 'rule_x' | 'rule_y' | 'piece' | 'point' | 'rule' | 'size' | 'note';
type Row = TableRow<Column>;

/**
 * Reads a long sheet. Rows with the name of a rule and no point define it; rows with a point and the
 * name use it. Throws InputError with row and column.
 */
export function readLongSheet(text: string, file: string): RuleSheet {
  const table = readTable<Column>(
    text,
    file,
    ['point'],
    ['piece', 'size', ...MOVES, 'rule_x', 'rule_y', 'rule', 'note'],
  );
  const unit = sheetUnit(table, table.units.values());
  const moves = MOVES.filter((name) => table.columns.has(name));
  const defines = (row: Row): boolean => row('point').text === '' && row('rule').text !== '';
  const rules = new Map<string, Row[]>();
  for (const row of table.rows.filter(defines)) {
    const name = row('rule').text;
    rules.set(name, [...(rules.get(name) ?? []), row]);
  }
  const cells = table.rows
    .filter((row) => !defines(row))
    .flatMap((row) => {
      const own = row('rule');
      const sources = own.text === '' ? [row] : (rules.get(own.text) ?? unknownRule(own, rules));
      return sources.flatMap((source) => cellsOf(row, source, moves, unit));
    });
  return { file, unit, comments: table.comments, cells };
}

/** The cells of a row; `source` holds its numbers, which is another row where a named rule is used. */
function cellsOf(
  row: Row,
  source: Row,
  moves: readonly (typeof MOVES)[number][],
  unit: LengthUnit,
): readonly RuleCell[] {
  const names = readName(row('piece'), row('point'));
  const point = `${names.piece}.${names.point}`;
  const size = source('size');
  const cell = (own: TableCell, column: Pick<RuleCell, 'axis' | 'form'>): RuleCell => ({
    ...names,
    ...column,
    ...readMove(own, unit),
    size: size.text,
    places: {
      cell: { ...own.place, point, ...(size.text === '' ? {} : { size: size.text }) },
      piece: (row('piece').text === '' ? row('point') : row('piece')).place,
      point: row('point').place,
      size: size.place,
    },
  });
  const typed = moves
    .map((name) => ({ column: MOVE_COLUMNS[name], own: source(name) }))
    .filter(({ own }) => size.text !== '' || own.text !== '')
    .map(({ column, own }) => cell(own, column));
  const given = typed.filter(({ mm, formula }) => mm !== undefined || formula !== undefined);
  // What stands in grade-rules.csv beside the numbers only explains them.
  const formulas =
    given.length > 0
      ? []
      : FORMULAS.map(([axis, name]) => cell(source(name), { axis, form: 'move' })).filter(
          ({ mm, formula }) => mm !== undefined || formula !== undefined,
        );
  const all = formulas.length > 0 ? formulas : typed;
  if (size.text === '') refuseSizeless(all, size);
  return all;
}

/** Without a size a step holds everywhere, and so does a formula; a move does not, unless it is 0. */
function refuseSizeless(cells: readonly RuleCell[], size: TableCell): void {
  const move = cells.find(({ form, mm }) => form === 'move' && mm !== undefined && mm !== 0);
  if (move === undefined && cells.length > 0) return;
  throw new InputError('size-missing', {
    what: 'a row does not say its size',
    allowed: 'the label of a size; only a step, or a formula, may hold in every size',
    got: size.text,
    place: size.place,
  });
}

function unknownRule(
  { text, place }: TableCell,
  rules: ReadonlyMap<string, readonly Row[]>,
): never {
  throw new InputError('rule-unknown', {
    what: 'there is no rule of this name',
    allowed: [...rules.keys()].join(', ') || 'rows that define it, without a point',
    got: text,
    place,
  });
}
