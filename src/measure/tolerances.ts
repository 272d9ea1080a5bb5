/** Usual tolerances of finished measurements, where neither a style nor a list states them. */
import { marketValue } from '../draft/market-value';
import { TOLERANCE_PARAMETERS } from '../draft/tolerance-parameters';
import { parseLength } from '../table/number-cell';
import { SAME_STEP } from '../tolerance';
import { toMillimeters } from '../units';
import type { MeasureGroup, Taken, Tolerance } from './spec';

/** What a style sets, in mm; zero leaves a girth to its grade step. */
export type ToleranceSettings = Readonly<Record<MeasureGroup, number>>;

/** What the parameters of a style say in mm; what they do not say is as usual. */
export function toleranceSettings(
  parameters: ReadonlyMap<string, number> = new Map(),
): ToleranceSettings {
  const setting = (group: MeasureGroup): number =>
    parameters.get(`${group}_tolerance`) ?? usualSetting(`${group}_tolerance`);
  return {
    girth: setting('girth'),
    hem: setting('hem'),
    length: setting('length'),
    band: setting('band'),
    opening: setting('opening'),
  };
}

function usualSetting(parameter: string): number {
  const text = TOLERANCE_PARAMETERS.find(({ name }) => name === parameter)?.value ?? '';
  return parseLength(marketValue(text, 'in'), 'in') ?? NaN;
}

/** Those that a block has by itself, for any pattern whose style or list says nothing. */
export const USUAL_TOLERANCES: ToleranceSettings = toleranceSettings();

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
