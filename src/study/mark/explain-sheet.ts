/** From the wrong cells of a sheet to the slips behind them. */
import { SAME_PLACE } from '../../tolerance';
import type { LengthUnit } from '../../units';
import { mostlyExplained } from './explains-most';
import { explainSeries } from './explanations';
import type { ExplainedSheet } from './fewest-slips';
import { precisionOf } from './marked-cells';
import type { Reading } from './sheet-cause';
import { ROW_HABITS } from './row-habits';
import { slipsFor } from './slips';
import { consistentSwaps } from './swaps';

/**
 * The fewest slips behind the wrong cells of a reading; the sheet is in `unit`, `tolerance` in mm. `isPlain` where
 * it is read as it stands: a row's own habit would only undo what is taken for that of the whole sheet.
 */
export function explainSheet(
  { key, series }: Reading,
  unit: LengthUnit,
  tolerance: number,
  isPlain: boolean,
): ExplainedSheet {
  // Where nothing is moved anywhere, nothing was done that could be a slip.
  const moved = series.some(({ given }) => given.some((mm) => Math.abs(mm ?? 0) > SAME_PLACE));
  if (!moved) return { found: [], unexplained: [] };
  const all = slipsFor(key, series, unit, tolerance);
  const slips = isPlain ? all : all.filter((slip) => !ROW_HABITS.includes(slip));
  const match = precisionOf(key, series, tolerance);
  const runs = series.flatMap((one) => explainSeries(key, one, slips, { tolerance, match }));
  const consistent = consistentSwaps(key, series, runs, match);
  return mostlyExplained(key, series, consistent, slips, { tolerance, match });
}
