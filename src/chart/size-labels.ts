/** The names of a chart's sizes, checked. */
import { InputError } from '../errors';
import type { ChartTable, ChartCell, ChartLine } from './layout';
import { cellPosition } from './layout';
import { checkOneLine, checkSizeCount, checkSizeLabel } from '../table/size-label';
import { excerpt, isBlank, tidyText } from '../table/tidy-text';

/** The label of a size, and where its cells stand. */
export interface SizeLabel {
  /** As written, without blanks around it. */
  readonly name: string;
  /** Where the size is among the table's sizes, and in each of its lines. */
  readonly index: number;
}

/**
 * The sizes of a table that have a label. Throws `size-missing` if a cell of a needed line belongs
 * to no labeled size, `size-twice` for two sizes of one name, `sizes-too-few` if there is
 * none, and what `checkSizeLabel`, `checkOneLine` and `checkSizeCount` throw.
 */
export function readSizeLabels(
  table: ChartTable,
  needed: readonly (ChartLine & { readonly name: string })[],
  file: string,
): readonly SizeLabel[] {
  const found = new Map<string, { label: ChartCell; index: number }>();
  for (const [index, label] of table.sizes.entries()) {
    const name = tidyText(label.text);
    if (name === '') {
      refuseStrayCells(needed, index, file);
      continue;
    }
    checkOneLine(label.text, { file, row: label.row, column: label.column });
    checkSizeLabel(name, { file, row: label.row, column: label.column });
    const earlier = found.get(name)?.label;
    if (earlier !== undefined) {
      throw new InputError('size-twice', {
        what: `two sizes have one name, in ${cellPosition(earlier)} and in ${cellPosition(label)}`,
        allowed: 'a name of its own for each size',
        got: name,
        place: { file, row: label.row, column: label.column, size: name },
      });
    }
    found.set(name, { label, index });
  }
  checkSizeCount(found.size, { file, row: table.corner.row });
  if (found.size < 1) {
    throw new InputError('sizes-too-few', {
      what: 'the chart has no size',
      allowed: 'one size or more, each with its name',
      got: [...found.keys()].join(', '),
      place: { file, row: table.corner.row },
    });
  }
  return [...found].map(([name, { index }]) => ({ name, index }));
}

function refuseStrayCells(
  needed: readonly (ChartLine & { readonly name: string })[],
  index: number,
  file: string,
): void {
  for (const { name, cells } of needed) {
    const cell = cells[index];
    if (cell === undefined || isBlank(cell.text)) continue;
    throw new InputError('size-missing', {
      what: 'a measurement belongs to no size',
      allowed:
        'the name of a size for every cell; a number with a decimal comma between quotes, or cells parted by ' +
        'semicolons',
      got: excerpt(cell.text),
      place: { file, row: cell.row, column: cell.column, measurement: name },
    });
  }
}
