/** A sheet that states one zero, or one direction of y, and counts from another. */
import type { AnswerKey } from './answer-key';
import type { Convention } from './convention';
import { recognizeConvention } from './recognize-convention';
import type { Series } from './series';
import type { SheetCause } from './sheet-cause';
import { asItStands } from './sheet-cause';
import type { StatedConvention } from './stated-convention';

/** A cause, and the convention that the numbers are in. */
export interface OtherConvention {
  readonly cause: SheetCause;
  readonly convention: Convention;
}

/** What the numbers are counted in where it is not what is stated; `tolerance` in mm. */
export function otherConvention(
  key: AnswerKey,
  series: readonly Series[],
  { zero, up }: StatedConvention,
  tolerance: number,
): readonly OtherConvention[] {
  const found = (stated: StatedConvention): Convention =>
    recognizeConvention(key, series, stated, tolerance);
  const causes: OtherConvention[] = [];
  if (zero !== undefined) {
    const convention = found({ zero: undefined, up });
    const stated = zero.join(' and ');
    const places = [...convention.zeros]
      .filter(([, points]) => points.join() !== zero.join())
      .map(([piece, points]) => `${points.join(' and ')} of the ${piece}`);
    if (places.length > 0)
      causes.push({
        cause: {
          id: 'zero',
          words: `zero elsewhere: ${stated} is stated, the numbers count from ${places.join(', ')}`,
          advice: `count from ${stated}, or state the zero that is used`,
          read: asItStands,
        },
        convention,
      });
  }
  if (up !== undefined) {
    const convention = found({ zero, up: undefined });
    const [stated, used] = up ? ['up', 'down'] : ['down', 'up'];
    if (convention.up !== up)
      causes.push({
        cause: {
          id: 'direction',
          words: `y turned: it is stated to run ${stated}, and every number runs ${used}`,
          advice: `let y run ${stated}, or state the direction that is used`,
          read: asItStands,
        },
        convention,
      });
  }
  return causes;
}
