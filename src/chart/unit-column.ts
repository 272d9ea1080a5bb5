/** A column of units beside the measurements: `measurement,unit,6,8,10`. */
import { isBlank, tidyText } from '../table/tidy-text';
import { unitNamed } from '../table/unit-name';
import type { UnitStatement } from '../table/unit-statement';
import type { ChartCell, ChartTable } from './layout';
import { recognizeMeasurement } from './vocabulary';

const UNIT = /^units?$/iu;

/**
 * The table without its column (or, with one size a row, its line) of units, and what that states of
 * the measurements; rows that are not known may have a unit that is none of length.
 */
export function takeUnitColumn(
  table: ChartTable,
  file: string,
): {
  readonly table: ChartTable;
  readonly statements: readonly UnitStatement[];
} {
  const stated = ({ text, row, column }: ChartCell): readonly UnitStatement[] =>
    isBlank(text) ? [] : [{ text: tidyText(text), place: { file, row, column } }];
  const line = table.lines.find(({ label }) => UNIT.test(tidyText(label.text)));
  if (line !== undefined && table.layout === 'size-rows') {
    const lines = table.lines.filter((other) => other !== line);
    return { table: { ...table, lines }, statements: line.cells.flatMap(stated) };
  }
  const at = table.sizes.findIndex(({ text }) => UNIT.test(tidyText(text)));
  if (at < 0) return { table, statements: [] };
  const without = <Cell>(cells: readonly Cell[]): readonly Cell[] =>
    cells.filter((_, i) => i !== at);
  const statements = table.lines.flatMap(({ label, cells }) => {
    const cell = cells[at];
    if (cell === undefined) return [];
    const isKnown = recognizeMeasurement(label.text) !== undefined;
    return isKnown || unitNamed(cell.text) !== undefined ? stated(cell) : [];
  });
  const lines = table.lines.map((own) => ({ ...own, cells: without(own.cells) }));
  return { table: { ...table, sizes: without(table.sizes), lines }, statements };
}
