/** A chart as single facts: its title and base, its sizes, each measurement of each size. */
import { unreadInChart } from '../../check/not-read';
import type { SizeChart } from '../../chart/size-chart';
import { statedBase } from '../../chart/size-chart';
import { imprintOf } from '../../table/imprint';
import { allStated } from '../../table/said-line';
import { tableNumber } from '../../units';
import type { Fact } from './facts';
import { statedFacts } from './stated-facts';

/** The facts of a chart; a cell of which no length was read stands as it was typed. Throws what `imprintOf` throws. */
export function chartFacts(chart: SizeChart): readonly Fact[] {
  const { comments, rows, sizes, unit } = chart;
  return [
    ...statedFacts({
      title: allStated(comments, 'title')[0]?.text,
      base: statedBase(chart),
      imprint: imprintOf(comments),
      sizes,
      unread: unreadInChart(chart),
    }),
    ...rows.flatMap(({ name, values, cells }) =>
      sizes.map((size, i): Fact => {
        const mm = values[i] ?? null;
        return {
          ...{ of: 'measure', name, size, value: 'length' },
          ...(mm === null
            ? { text: cells[i] ?? '', unit: '' }
            : { text: tableNumber(mm, unit), unit }),
        };
      }),
    ),
  ];
}
