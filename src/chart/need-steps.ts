/** For what asks how a chart grows: a chart of one body does not. */
import { InputError } from '../errors';
import type { SizeChart } from './size-chart';

/** Throws InputError `sizes-too-few` for a chart of one size, which has no steps. */
export function needSteps({ sizes, file }: SizeChart): void {
  if (sizes.length > 1) return;
  throw new InputError('sizes-too-few', {
    what: 'the chart has one size, so it has no steps and no grade rules',
    allowed: 'two sizes or more',
    got: sizes.join(', '),
    place: { file },
  });
}
