/** Rows of a list, or columns, that are no bodies: figures made of all others, and remarks beside them. */
import { InputError } from '../errors';
import { isSummary, namesNone } from '../table/size-label';
import { isBlank, tidyText } from '../table/tidy-text';
import type { BodyColumns, BodyEntry } from './body-list';
import { placeOf } from './body-list';

/**
 * Throws InputError `size-missing` for what is called by such a word, which would be cut as if it were somebody. What
 * has no name is told by a cell that is no measurement.
 */
export function refuseNoBody(columns: BodyColumns, entry: BodyEntry): void {
  const { name, cells } = entry;
  const isNamedBeside = (): boolean =>
    cells.some(({ text }, i) => columns.columns[i]?.known === false && isSummary(tidyText(text)));
  if (!(isBlank(name) ? isNamedBeside() : namesNone(name))) return;
  throw new InputError('size-missing', {
    what: 'a word for figures about others, or for a remark, stands where a body has its name',
    // What stands there may be a name after all, which is told nowhere.
    allowed: 'a name; for a person who is called so, a letter or a word more, as in "Max B."',
    place: { file: columns.file, ...placeOf(columns, entry) },
  });
}

/** Throws InputError `cell-not-a-number` for a line that begins as a remark does, where bodies stand. */
export function refuseRemark({ file }: BodyColumns, row: number): never {
  throw new InputError('cell-not-a-number', {
    what: 'a line that begins with # is no body',
    allowed: 'a name that begins otherwise; a remark in a line "# not read: ..."',
    place: { file, row },
  });
}
