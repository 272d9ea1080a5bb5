/** In words, how sure a slip is and what would tell it from others. */
import type { FoundSlip } from '../study/mark/fewest-slips';
import type { Slip } from '../study/mark/slip';
import { rowName } from '../study/mark/series';
import type { Diagnosed } from '../study/mark/sureness';
import { surenessOf, tellingApart } from '../study/mark/sureness';

/** How sure it is, and in how many of the rows where it could show. */
export function surenessWords(sheet: Diagnosed, found: FoundSlip): string {
  const { grade, numbers, isExact, rows, couldBe } = surenessOf(sheet, found);
  const these = numbers === 1 ? 'this number' : `these ${numbers} numbers`;
  const nearly = isExact ? '' : ', and it only nearly';
  const none = `no other slip that is looked for gives ${these}${nearly}`;
  const why = {
    sure: `Sure: ${none}`,
    likely: `Likely: ${none}`,
    open: `Not sure: other slips give ${these} too`,
  }[grade];
  const where =
    couldBe === 1
      ? 'it could show in no other row'
      : rows === couldBe
        ? `it shows in all ${couldBe} rows where it could`
        : `it shows in ${rows} of ${couldBe} rows where it could`;
  return `${why}; ${where}.`;
}

/** What tells another slip with the same numbers from the one that is named. */
export function apartWords(sheet: Diagnosed, found: FoundSlip, other: Slip): string {
  const apart = tellingApart(sheet, found, other);
  if (apart.by === 'nothing') return 'no number that is asked for tells: ask, or set another chart';
  const row = rowName(apart.row);
  if (apart.by === 'blank') {
    const sizes = apart.sizes.map((i) => sheet.key.sizes[i] ?? '').join(', ');
    return `${row} in ${sizes}, blank here, would tell`;
  }
  const which = apart.turnedBy === other ? 'it' : 'the first';
  return apart.by === 'right'
    ? `${which} would turn ${row} as well, which is right here`
    : `${row}, blank here, would tell: only ${which === 'it' ? 'this' : 'the first'} turns it`;
}
