/** Finished measurements of two runs beside each other. */
import { roundTo } from '../../grade/rounding';
import type { SizeTable } from '../../print/size-table';
import { inMarket } from '../../print/size-table';
import { SHOWN_ALIKE } from '../../tolerance';
import { fromMillimeters, inchFraction, toMillimeters } from '../../units';
import type { Row } from './rows';
import { millimeters } from './rows';

/**
 * The measurements that changed by a length that somebody draws, each by how much in each size that
 * both have; undefined where none did.
 */
export function measureChanges(
  before: readonly Row[],
  now: readonly Row[],
  labels: readonly string[],
): SizeTable | undefined {
  const sizes = labels.filter((label) => Object.hasOwn(before[0] ?? {}, label));
  const rows = now.flatMap((row) => {
    const { measure = '' } = row;
    const old = before.find((other) => other.measure === measure);
    if (old === undefined) return [];
    const moved = sizes.map((size) => {
      const [was, is] = [millimeters(old[size], old.unit), millimeters(row[size], row.unit)];
      if (was === is) return 0;
      return Number.isFinite(was) && Number.isFinite(is) ? is - was : (row[size] ?? '');
    });
    if (moved.every((by) => typeof by === 'number' && Math.abs(by) < SHOWN_ALIKE)) return [];
    const cells = (show: (mm: number) => string): readonly string[] =>
      moved.map((by) => (typeof by === 'number' ? show(by) : by));
    const lines = [
      { unit: 'cm', cells: cells((mm) => signed(mm, fromMillimeters(mm, 'cm').toFixed(2))) },
      { unit: 'in', cells: cells((mm) => signed(mm, inches(mm))) },
    ];
    return [{ name: measure.replace(/_/gu, ' '), lines }];
  });
  if (rows.length === 0) return undefined;
  const heading = 'Finished garment, longer (+) or shorter (-) than before';
  return inMarket({ heading, sizes, rows }, now[0]?.unit === 'in' ? 'in' : 'cm');
}

function signed(mm: number, shown: string): string {
  if (Math.abs(mm) < SHOWN_ALIKE) return '0';
  return mm > 0 ? `+${shown}` : shown;
}

/** To the nearest thirty-second, or in decimals where that would be nothing. */
function inches(mm: number): string {
  return inchFraction(roundTo(mm, THIRTY_SECOND) || mm, 32);
}

const THIRTY_SECOND = toMillimeters(1 / 32, 'in');
