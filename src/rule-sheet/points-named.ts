/** What a sheet names, before it is known which points and sizes there are. */
import { statedBlanks } from '../table/blanks';
import { statedBy } from '../table/statements';
import { readOpenTable } from '../table/typed-table';
import { longRows } from './long-rows';
import { COLUMNS } from './rule-columns';
import { wideRows } from './wide-rows';

/**
 * Piece and point of every row as typed, in one text: `back.dart_tip` or, from two columns, `back dart_tip`.
 * Throws InputError as `readRuleSheet` does for what is no table of rules.
 */
export function pointsNamed(text: string, file: string): readonly string[] {
  const table = readOpenTable(text, file, COLUMNS);
  const layout = table.columns.has('axis') ? wideRows : longRows;
  const { rows } = layout(table, statedBlanks(table).isBlank);
  return rows.map(({ piece, point }) => `${piece.text} ${point.text}`.trim());
}

/** The base that a sheet states, as typed; undefined for none. Throws InputError as `readOpenTable` does. */
export function baseNamed(text: string, file: string): string | undefined {
  return statedBy(readOpenTable(text, file, COLUMNS), 'base')?.text;
}
