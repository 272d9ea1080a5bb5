/** The base size that a chart states of itself. */
import { allStated } from '../table/said-line';
import type { SizeChart } from './size-chart';

/** What the first line such as `# base: 10` states, as typed; undefined for none. */
export function statedBase({ comments }: Pick<SizeChart, 'comments'>): string | undefined {
  return allStated(comments, 'base')[0]?.text;
}
