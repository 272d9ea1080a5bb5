/** The girths of a chart must not shrink from a smaller size to a larger. */
import { GIRTHS } from '../chart/plausible';
import type { SizeChart } from '../chart/size-chart';
import { SAME_STEP } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { completeValues } from './chart-bodies';
import type { Finding } from './finding';
import { checkLarger } from './larger';

/** Every girth of the chart that has no blank cell. */
export function checkLargerGirths(chart: SizeChart, display: LengthDisplay): Finding[] {
  return checkLarger(
    chart.sizes,
    GIRTHS.flatMap((name) => {
      const values = completeValues(chart, name);
      if (values === undefined) return [];
      return {
        piece: '',
        subject: name,
        name: `the ${name.replace('_girth', '').replace('_', ' ')}`,
        quantity: 'length' as const,
        values,
        slack: SAME_STEP,
        show: (mm: number) => showLength(mm, display),
      };
    }),
  );
}
