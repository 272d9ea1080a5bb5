/** The rows of a sheet as the cells of points, the named rules among them put in. */
import { InputError, readEach } from '../errors';
import type { Place } from '../errors';
import type { TypedCell } from '../table/typed-table';
import { matchName } from '../table/name-match';
import type { RuleRow } from './rule-row';
import type { RuleCell, RuleSheet } from './rule-sheet';

type PointName = Pick<RuleCell, 'piece' | 'point'>;

/** A rule of a point: its cells, and where it is given. */
interface Given extends PointName {
  readonly rule: string;
  readonly place: Place;
  readonly cells: readonly RuleCell[];
}

/**
 * Puts named rules in where they are used, those of the sheet and those that are `shared`. Throws InputError `rule-unknown` for a name that no row
 * defines, and `rule-twice` where a point has two named rules, a named rule and numbers of its own,
 * or the same number twice, with both places.
 */
export function pointCells(
  rows: readonly RuleRow[],
  cellsOf: (row: RuleRow) => readonly RuleCell[],
  nameOf: (row: RuleRow) => PointName,
  shared: RuleSheet['named'] = new Map(),
): Pick<RuleSheet, 'cells' | 'named'> {
  const named = new Map<string, readonly RuleCell[]>(shared);
  for (const row of rows.filter(defines)) {
    const { text } = row.rule;
    if (matchName(text, [...shared.keys()]) !== undefined) refuseShared(row.rule);
    named.set(text, [...(named.get(text) ?? []), ...cellsOf(row)]);
  }
  named.forEach(refuseTwice);
  const ofPoints = rows.filter((row) => !defines(row));
  const given = readEach(ofPoints, (row): Given => {
    const names = nameOf(row);
    const own = { ...names, rule: row.rule.text, place: (row.typed ?? row.point).place };
    if (own.rule === '') return { ...own, cells: cellsOf(row) };
    if (row.typed !== undefined) refuseNumbers(row.rule, row.typed);
    const cells = named.get(definedRule(named, row.rule)) ?? [];
    return { ...own, place: row.rule.place, cells };
  });
  refuseTwoRules(given);
  const cells = given.flatMap(({ piece, point, cells: own }) =>
    own.map((cell): RuleCell => {
      const places = { ...cell.places, cell: { ...cell.places.cell, point: `${piece}.${point}` } };
      return { ...cell, piece, point, places };
    }),
  );
  refuseTwice(cells);
  return { cells, named };
}

/** The rule of this name, as the sheet writes it. Throws InputError `rule-unknown`. */
export function definedRule(named: RuleSheet['named'], { text, place }: TypedCell): string {
  const name = matchName(text, [...named.keys()]);
  if (name !== undefined) return name;
  throw new InputError('rule-unknown', {
    what: 'there is no rule of this name',
    allowed:
      [...named.keys()].join(', ') || 'rows that define it in the rule sheet, without a point',
    got: text,
    place,
  });
}

function refuseShared({ text, place }: TypedCell): never {
  throw new InputError('rule-twice', {
    what: 'a rule is defined here and in the library, too',
    allowed: 'one definition, or another name',
    got: text,
    place,
  });
}

function defines({ piece, point, rule }: RuleRow): boolean {
  return piece.text === '' && point.text === '' && rule.text !== '';
}

/** `row 4, column 5`, for messages that name two places. */
export function inWords({ row, column }: Place): string {
  return `row ${row ?? '?'}${column === undefined ? '' : `, column ${column}`}`;
}

function refuseNumbers({ text, place }: TypedCell, typed: TypedCell): never {
  throw new InputError('rule-twice', {
    what: `a point has the rule ${text} (${inWords(place)}) and numbers of its own`,
    allowed: 'the name of a rule, or numbers',
    got: typed.text,
    place: typed.place,
  });
}

/** A point may have rows of its own, many of them, or one named rule. */
function refuseTwoRules(given: readonly Given[]): void {
  const first = new Map<string, Given>();
  for (const own of given) {
    const id = `${own.piece}.${own.point}`;
    const other = first.get(id);
    if (other === undefined) first.set(id, own);
    else if (other.rule !== '' || own.rule !== '') {
      const [a, b] = [other, own].map(({ rule }) => (rule === '' ? 'numbers' : `the rule ${rule}`));
      throw new InputError('rule-twice', {
        what: `a point has two rules, ${a ?? ''} in ${inWords(other.place)}, and ${b ?? ''} here`,
        allowed: 'one named rule a point, or numbers',
        got: id,
        place: { ...own.place, point: id },
      });
    }
  }
}

/** A cell for all sizes is there twice if there is one for a single size. */
function refuseTwice(cells: readonly RuleCell[]): void {
  const seen = new Map<string, Map<string, RuleCell>>();
  for (const cell of cells) {
    const { piece, point, size, axis, form, places } = cell;
    const id = [piece, point, axis, form].join('\n');
    const bySize = seen.get(id) ?? new Map<string, RuleCell>();
    const [any] = bySize.values();
    const first = bySize.get(size) ?? bySize.get('') ?? (size === '' ? any : undefined);
    if (first !== undefined)
      throw new InputError('rule-twice', {
        what: `the same number stands in the sheet twice, in ${inWords(first.places.cell)}, and here`,
        allowed: 'one row for all sizes, or one row a size',
        got: cell.text,
        place: places.cell,
      });
    seen.set(id, bySize.set(size, cell));
  }
}
