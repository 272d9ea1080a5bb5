/** Names that stand once above the rows that they are for, as in a table with merged cells. */
import type { PiecePlan } from '../pattern/piece';
import { matchName, namesMeant } from '../table/name-match';
import type { TypedCell } from '../table/typed-table';
import type { RuleRow } from './rule-row';

/**
 * The rows with the piece of the row above where their own is blank and that piece has the point, and
 * with piece and point of the row above where a row has but numbers; without `plans` every piece has every
 * point. A row that defines a named rule has no point, and none is carried past it.
 */
export function carriedNames(
  rows: readonly RuleRow[],
  plans: readonly PiecePlan[] | undefined,
): readonly RuleRow[] {
  let above: Pick<RuleRow, 'piece' | 'point'> | undefined;
  return rows.map((row) => {
    const { piece, point, rule, entries } = row;
    const isBare = piece.text === '' && point.text === '';
    if (isBare && rule.text !== '') above = undefined;
    if (above === undefined || piece.text !== '') {
      if (!isBare) above = { piece, point };
      return row;
    }
    if (isBare) return entries.length === 0 ? row : { ...row, ...at(row, above) };
    const carried = at(row, { ...above, point });
    if (above.piece.text === '' || !hasPoint(above.piece.text, point.text, plans)) return row;
    above = carried;
    return { ...row, ...carried };
  });
}

/** The names at the places of the row that takes them. */
function at(
  row: RuleRow,
  { piece, point }: Pick<RuleRow, 'piece' | 'point'>,
): Pick<RuleRow, 'piece' | 'point'> {
  const placed = (text: string, { place }: TypedCell): TypedCell => ({ text, place });
  return { piece: placed(piece.text, row.piece), point: placed(point.text, row.point) };
}

function hasPoint(piece: string, point: string, plans: readonly PiecePlan[] | undefined): boolean {
  // Without a pattern a name of two parts brings its own piece.
  if (plans === undefined) return !point.includes('.');
  const name = matchName(
    piece,
    plans.map((plan) => plan.name),
  );
  const plan = plans.find((own) => own.name === name);
  return plan !== undefined && namesMeant(point, plan.pointNames).length > 0;
}
