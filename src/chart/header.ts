/** The line that names the sizes of a chart with one measurement a row. */
import { InputError } from '../errors';
import { isCornerLabel } from '../table/label';
import type { SheetRecord } from '../table/sheet';
import { isBlank } from '../table/tidy-text';
import { recognizeMeasurement } from './vocabulary';

/**
 * The index of the header among `records`, whose measurements stand in column `labels` (from 0).
 * Title lines may have delimiters in them and rows of unknown measurements may come first, so the
 * header is told by its first cell, else by having a cell above every cell of a measurement.
 * Throws `chart-no-header` if no line, or more than one, can be the header: to take the wrong one
 * would give every size the name of another.
 */
export function findHeader(records: readonly SheetRecord[], labels: number, file: string): number {
  const firstKnown = records.findIndex(({ cells }) => recognizeMeasurement(cells[labels] ?? ''));
  const before = records.slice(0, firstKnown);
  // Rows that are still to be filled in have cells all the same, below whatever stands above them.
  const columns =
    [records.slice(firstKnown, firstKnown + 1), records.slice(firstKnown), before]
      .map((rows) => [...new Set(rows.flatMap((row) => filledColumns(row, labels)))])
      .find(({ length }) => length > 0) ?? [];
  const above = before
    .map(({ row, cells }, index) => ({
      index,
      row,
      corner: cells[labels] ?? '',
      covered: columns.filter((column) => !isBlank(cells[column] ?? '')).length,
    }))
    .filter(({ covered }) => covered > 0);

  const named = above.filter(({ corner }) => isCornerLabel(corner));
  const widest = Math.max(...named.map(({ covered }) => covered));
  const first = named.find(({ covered }) => covered === widest);
  if (first !== undefined) return first.index;

  const complete = above.filter(({ covered }) => covered === columns.length);
  const likely = complete.length > 0 ? complete : above;
  const unlabeled = likely.filter(({ corner }) => isBlank(corner));
  const [header, ...others] = unlabeled.length > 0 ? unlabeled : likely;
  if (header !== undefined && others.length === 0) return header.index;

  throw new InputError('chart-no-header', {
    what:
      header === undefined
        ? 'no line above the measurements names the sizes'
        : `more than one line could be the one that names the sizes`,
    allowed: 'one line such as `measurement,8,10,12` above the measurements',
    got:
      header === undefined
        ? 'measurements only'
        : [header, ...others].map(({ row }) => `row ${row}`).join(', '),
    place: { file, row: header?.row ?? records[firstKnown]?.row ?? 1 },
  });
}

function filledColumns(record: SheetRecord | undefined, labels: number): number[] {
  return (record?.cells ?? []).flatMap((cell, column) =>
    column > labels && !isBlank(cell) ? [column] : [],
  );
}
