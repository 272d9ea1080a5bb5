/** The sizes of a sheet that comes without a chart, and its base. */
import { InputError } from '../../errors';
import { statedSizes } from '../../rule-sheet/size-list';
import { statedBy } from '../../table/typed-table';
import type { RuleSheet } from '../../rule-sheet/rule-sheet';
import { SAME_PLACE } from '../../tolerance';

/** The sizes that the sheet states (`# sizes: 8, 10, 12`), otherwise those of its cells. Throws `size-missing`. */
export function sizesOf(sheet: RuleSheet): readonly string[] {
  const stated = statedBy(sheet, 'sizes');
  if (stated !== undefined) return statedSizes(stated);
  const sizeless = sheet.cells.find(({ size }) => size === '');
  const sizes = new Set(sheet.cells.map(({ size }) => size).filter((size) => size !== ''));
  if (sizes.size > 0 || sizeless === undefined) return [...sizes];
  throw new InputError('size-missing', {
    what: 'the sheet names no sizes',
    allowed: 'a line such as "# sizes: 8, 10, 12" above steps that hold in every size',
    got: '',
    place: sizeless.places.size,
  });
}

/** The base that is wanted or stated, otherwise the size without moves. Throws `size-missing`. */
export function baseOf(sheet: RuleSheet, wanted: string | undefined): string {
  const stated = wanted ?? statedBy(sheet, 'base')?.text;
  if (stated !== undefined) return stated;
  const still = sizesOf(sheet).filter((size) => {
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
