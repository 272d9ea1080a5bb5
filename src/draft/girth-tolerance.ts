/** The usual tolerance of waist and hip, which goes by the step from size to size. */
import { SAME_STEP } from '../tolerance';
import { toMillimeters } from '../units';

/** Where tolerances are round: in inches or in millimeters. */
export type Market = 'in' | 'metric';

/** From a step of `step` mm on, the largest first; mm in each market. The parameter tells them in words. */
const BY_STEP = [
  { step: toMillimeters(3 / 2, 'in'), in: toMillimeters(1 / 2, 'in'), metric: 12 },
  { step: toMillimeters(1, 'in'), in: toMillimeters(3 / 8, 'in'), metric: 10 },
  { step: 0, in: toMillimeters(1 / 4, 'in'), metric: 6 },
] as const;

/** mm, of a girth whose smallest step is `step` mm. */
export function girthTolerance(step: number, market: Market): number {
  return BY_STEP.find((limit) => step >= limit.step - SAME_STEP)?.[market] ?? 0;
}
