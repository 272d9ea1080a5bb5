/** Cloth to buy of two runs beside each other. */
import { counted } from '../../table/counted';
import type { Row } from './rows';
import { grouped } from '../../lists/grouped';

/** A sentence for each cloth of which more or less is to be bought, with the largest change. */
export function clothChanges(
  before: readonly Row[],
  now: readonly Row[],
  labels: readonly string[],
): readonly string[] {
  const needOf = (row: Row): string =>
    JSON.stringify([row.cloth, row.width, row.unit, row.fold, row.nap]);
  const known = new Map(before.filter(isBought).map((row) => [needOf(row), row]));
  const moved = now.filter(isBought).flatMap((row) => {
    const old = known.get(needOf(row)) ?? {};
    return labels.flatMap((size) => {
      const [was, is] = [centimeters(old[size]), centimeters(row[size])];
      if (is === was || Number.isNaN(is - was)) return [];
      return [{ row, size, was, is, by: is - was }];
    });
  });
  return [...grouped(moved, ({ row: { cloth = '' } }) => cloth)].map(([cloth, all]) => {
    const ends = all.map(({ by }) => by);
    const [least, most] = [Math.min(...ends), Math.max(...ends)];
    const { row, size, was, is } = all.reduce((a, b) => (Math.abs(b.by) > Math.abs(a.by) ? b : a));
    const range = least === most ? plus(most) : `${plus(least)} to ${plus(most)}`;
    return (
      `Cloth to buy, ${cloth}: ${counted(all.length, 'length')} changed by ` +
      `${range} cm; most ${size} on ${row.width ?? ''} ${row.unit ?? ''} ${row.fold ?? ''}, ` +
      `${was} to ${is} cm.`
    );
  });
}

function isBought({ measure }: Row): boolean {
  return measure === 'buy_cm';
}

function plus(cm: number): string {
  return cm > 0 ? `+${cm}` : String(cm);
}

/** A blank cell is cloth on which the pieces do not go. */
function centimeters(cell = ''): number {
  return cell === '' ? NaN : Number(cell);
}
