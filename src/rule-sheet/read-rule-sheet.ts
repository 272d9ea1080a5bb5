/** Reads a sheet of grade rules: one size a row, or one size a column. */
import { readSheet } from '../table/sheet';
import { InputError } from '../errors';
import { readLongSheet } from './read-long-sheet';
import { readWideSheet, wideHeader } from './read-wide-sheet';
import { LAYOUTS } from './rule-columns';
import type { RuleCell, RuleSheet } from './rule-sheet';

/**
 * Reads the text of a sheet; `file` names it in messages. Without a column `piece` the points are
 * named `front.side_hip`. Throws InputError with the row and the column for whatever would leave a
 * cell doubtful; a blank cell is none of that.
 */
export function readRuleSheet(text: string, file: string): RuleSheet {
  const raw = readSheet(text, file);
  const header = wideHeader(raw);
  const sheet = header === undefined ? readLongSheet(text, file) : readWideSheet(raw, header, file);
  if (sheet.cells.length === 0)
    throw new InputError('sheet-malformed', {
      what: 'the sheet has no rules',
      allowed: LAYOUTS,
      place: { file, row: raw.records[0]?.row ?? 1 },
    });
  refuseTwice(sheet.cells);
  return sheet;
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
        what: 'the same move stands in the sheet twice',
        allowed: 'one row for all sizes, or one row a size',
        got: `it stands in row ${first.places.cell.row ?? '?'} already`,
        place: places.cell,
      });
    seen.set(id, bySize.set(size, cell));
  }
}
