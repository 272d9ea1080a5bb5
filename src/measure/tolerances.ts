/** Usual tolerances of finished measurements, where neither a style nor a list states them. */
import { SAME_STEP } from '../tolerance';
import { toMillimeters } from '../units';
import type { MeasureGroup, Taken, Tolerance } from './spec';

/** What a style sets, in mm; zero leaves a girth to its grade step. */
export type ToleranceSettings = Readonly<Record<MeasureGroup, number>>;

/**
 * Proposals by analogy with published charts for other garments, since no table for skirts was
 * found: common practice, no source.
 */
export const USUAL_TOLERANCES: ToleranceSettings = {
  girth: 0,
  hem: toMillimeters(1 / 2, 'in'),
  length: toMillimeters(3 / 8, 'in'),
  band: toMillimeters(1 / 8, 'in'),
  opening: toMillimeters(1 / 4, 'in'),
};

/** What a spec says of tolerances that nobody stated. */
export const USUAL_SOURCE = 'common practice, no source: the usual tolerance of such a measure';

/** Girths: 1/4 in below a step of 1 in, 3/8 at 1 in, 1/2 at 1 1/2 in and over. */
const BY_STEP = [
  { step: toMillimeters(3 / 2, 'in'), tolerance: toMillimeters(1 / 2, 'in') },
  { step: toMillimeters(1, 'in'), tolerance: toMillimeters(3 / 8, 'in') },
  { step: 0, tolerance: toMillimeters(1 / 4, 'in') },
] as const;

/**
 * The tolerance of a measure whose smallest step is `step` mm, all round. What is laid flat is half
 * a girth, and so is its tolerance.
 */
export function usualTolerance(
  group: MeasureGroup,
  taken: Taken,
  step: number,
  settings: ToleranceSettings = USUAL_TOLERANCES,
): Tolerance {
  const byStep = BY_STEP.find((limit) => step >= limit.step - SAME_STEP)?.tolerance ?? 0;
  const all = group === 'girth' && settings.girth === 0 ? byStep : settings[group];
  const own = taken === 'flat' ? all / 2 : all;
  return { minus: own, plus: own };
}
