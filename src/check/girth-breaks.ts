/** Where the steps of the girths of a chart change. */
import type { SizeChart } from '../chart/size-chart';
import { sameStep } from './chart-step-runs';

/**
 * The girths of a chart whose step changes at a size. Lengths are left out: they grow by less than a tape
 * is read to, so their steps come and go.
 */
export function girthsBreakingAt({ rows, sizes }: SizeChart, size: string): readonly string[] {
  const at = sizes.indexOf(size);
  return rows.flatMap(({ name, known, values }) => {
    const [before, here, after] = [values[at - 1], values[at], values[at + 1]];
    if (!known || !name.endsWith('_girth') || before == null || here == null || after == null)
      return [];
    return sameStep(after - here, here - before) ? [] : [name];
  });
}
