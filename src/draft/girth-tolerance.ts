/** The usual tolerance of waist and hip, which goes by the step from size to size. */
import { SAME_STEP } from '../tolerance';
import { inchFraction, toMillimeters, trimmed, fromMillimeters } from '../units';

/** Where tolerances are round: in inches or in millimeters. */
export type Market = 'in' | 'metric';

/** From a step of `step` mm on, the largest first; mm in each market. */
const BY_STEP = [
  { step: toMillimeters(3 / 2, 'in'), in: toMillimeters(1 / 2, 'in'), metric: 12 },
  { step: toMillimeters(1, 'in'), in: toMillimeters(3 / 8, 'in'), metric: 10 },
  { step: 0, in: toMillimeters(1 / 4, 'in'), metric: 6 },
] as const;

/** mm, of a girth whose smallest step is `step` mm. */
export function girthTolerance(step: number, market: Market): number {
  return BY_STEP.find((limit) => step >= limit.step - SAME_STEP)?.[market] ?? 0;
}

/** The same in words: `0.6 cm (1/4 in) below a step of 2.5 cm (1 in), 1 cm (3/8 in) from there`. */
export const GIRTH_TOLERANCE_WORDS: string = [...BY_STEP]
  .reverse()
  .map((own, i, all) => {
    const next = all[i + 1];
    const said = both(own.metric, own.in);
    if (i === 0) return `${said} below a step of ${both(next?.step ?? NaN, next?.step ?? NaN)}`;
    return i === 1 ? `${said} from there` : `${said} from ${both(own.step, own.step)}`;
  })
  .join(', ');

function both(metric: number, inches: number): string {
  return `${trimmed(fromMillimeters(metric, 'cm'), 1)} cm (${inchFraction(inches, 16)} in)`;
}
