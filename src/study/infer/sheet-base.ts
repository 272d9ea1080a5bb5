/** The base size of a sheet that comes without a chart. */
import { InputError } from '../../errors';
import { statedBy } from '../../table/statements';
import type { RuleSheet } from '../../rule-sheet/rule-sheet';
import { SAME_PLACE } from '../../tolerance';

/** The base that is wanted or stated, otherwise the size without moves. Throws `size-missing`. */
export function baseOf(sheet: RuleSheet, wanted: string | undefined): string {
  const stated = wanted ?? statedBy(sheet, 'base')?.text;
  if (stated !== undefined) return stated;
  const still = sheet.sizes.filter((size) => {
    const cells = sheet.cells.filter((cell) => cell.size === size);
    return cells.length > 0 && cells.every(({ mm }) => Math.abs(mm ?? 0) <= SAME_PLACE);
  });
  const [base] = still;
  if (base !== undefined && still.length === 1) return base;
  throw new InputError('size-missing', {
    what: 'the sheet does not show its base size',
    allowed: 'one size whose moves are all zero, or a line such as "# base: 12"',
    orField: 'base',
    got: still.length === 0 ? 'no size without moves' : `${still.join(', ')} without moves`,
    place: { file: sheet.file },
  });
}
