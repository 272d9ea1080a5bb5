/** The base size of a sheet that comes without a chart. */
import { InputError } from '../../errors';
import { matchSize } from '../../table/name-match';
import { statedBy } from '../../table/statements';
import type { RuleSheet } from '../../rule-sheet/rule-sheet';
import { isFilled } from '../../rule-sheet/rule-sheet';
import { SAME_PLACE } from '../../tolerance';

/**
 * The base that is wanted or stated, otherwise the one size whose moves are all given as zero. Throws
 * InputError `rule-moves-base` where the column of the base is not zero, and `size-missing`.
 */
export function baseOf(sheet: RuleSheet, wanted: string | undefined): string {
  const typed = wanted ?? statedBy(sheet, 'base')?.text;
  const stated = typed && (matchSize(typed, sheet.sizes) ?? typed);
  const columns = sheet.sizes.map((size) => {
    const cells = sheet.cells.filter((cell) => cell.size === size && isFilled(cell));
    const moved = cells.filter(({ mm }) => Math.abs(mm ?? 0) > SAME_PLACE);
    return { size, cells, moved };
  });
  const still = columns
    .filter(({ cells, moved }) => cells.length > 0 && moved.length === 0)
    .map(({ size }) => size);
  if (stated !== undefined) {
    const own = columns.find(({ size }) => size === stated);
    const [first] = own?.moved ?? [];
    if (own === undefined) refuseOtherBase(sheet, stated, still);
    if (own === undefined || first === undefined) return stated;
    const others = still.length === 1 ? `; the column of ${still.join()} is zero` : '';
    throw new InputError('rule-moves-base', {
      what:
        `${own.moved.length} of ${own.cells.length} rules move their points in the base size, so ` +
        'the sheet counts from elsewhere or has a slip there',
      allowed: `0 in the base size, or no row for it${others}`,
      got: first.text,
      place: { ...first.places.cell, size: stated },
    });
  }
  const [base] = still;
  if (base !== undefined && still.length === 1) return base;
  const [nearest] = columns
    .filter(({ cells, moved }) => moved.length > 0 && moved.length < cells.length / 2)
    .toSorted((a, b) => a.moved.length - b.moved.length);
  const [slip] = nearest?.moved ?? [];
  throw new InputError('size-missing', {
    what: 'the sheet does not show its base size',
    allowed: 'one size whose moves are all zero, or a line such as "# base: 12"',
    orField: 'base',
    got:
      still.length > 0
        ? `${still.join(', ')} without moves`
        : nearest === undefined || slip === undefined
          ? 'no size without moves'
          : `no size without moves; nearest is ${nearest.size}, but for ${slip.piece}.${slip.point} ` +
            `d${slip.axis} and its ${slip.text}`,
    place: { file: sheet.file },
  });
}

/** A size that the sheet does not have cannot be its base where all cells of another are zero. */
function refuseOtherBase(sheet: RuleSheet, stated: string, still: readonly string[]): void {
  const [zero] = still;
  if (zero === undefined || still.length === sheet.sizes.length) return;
  throw new InputError('rule-moves-base', {
    what: `the sheet has no size ${stated}, and its rules count from ${still.join(' or ')}`,
    allowed: zero,
    got: stated,
    place: { file: sheet.file, field: 'base' },
  });
}
