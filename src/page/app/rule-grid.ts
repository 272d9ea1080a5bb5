/** How a rule sheet is shown as a grid. */
import { COLUMNS } from '../../rule-sheet/rule-columns';
import { columnNamed, namesColumns } from '../../table/typed-table';
import type { GridKind } from './grid';

/** Columns that say which cells a row has. */
const NAMING = ['piece', 'point', 'rule', 'size', 'axis'] as const;

const isRuleLine = (cells: readonly string[]): boolean => namesColumns(cells, COLUMNS);

/** Known by its header, with as many names as a row has. */
export const RULE_GRID: Pick<GridKind, 'tells' | 'isHeads' | 'isName'> = {
  tells: isRuleLine,
  isHeads: isRuleLine,
  isName: (head) => columnNamed(head, NAMING) !== undefined,
};
