/** Usual tolerances of finished measurements, where neither a style nor a list states them. */
import { marketValue } from '../draft/market-value';
import { TOLERANCE_PARAMETERS } from '../draft/tolerance-parameters';
import { parseLength } from '../table/number-cell';
import { SAME_STEP } from '../tolerance';
import type { LengthUnit } from '../units';
import { toMillimeters } from '../units';
import type { MeasureGroup, Taken, Tolerance } from './spec';

/** What a style sets, in mm; zero leaves a girth to its grade step, as the `market` has it. */
export type ToleranceSettings = Readonly<Record<MeasureGroup, number>> & {
  readonly market: Market;
};

/** Where tolerances are round: in inches or in millimeters. */
type Market = 'in' | 'metric';

/** What the parameters of a style say in mm; what they do not say is as usual for a pattern in `unit`. */
export function toleranceSettings(
  parameters: ReadonlyMap<string, number> = new Map(),
  unit: LengthUnit = 'in',
): ToleranceSettings {
  const setting = (group: MeasureGroup): number =>
    parameters.get(`${group}_tolerance`) ?? usualSetting(`${group}_tolerance`, unit);
  return {
    market: unit === 'in' ? 'in' : 'metric',
    girth: setting('girth'),
    hem: setting('hem'),
    length: setting('length'),
    band: setting('band'),
    opening: setting('opening'),
  };
}

function usualSetting(parameter: string, unit: LengthUnit): number {
  const text = TOLERANCE_PARAMETERS.find(({ name }) => name === parameter)?.value ?? '';
  return parseLength(marketValue(text, unit), unit) ?? NaN;
}

/** Those that a block has by itself, for any pattern whose style or list says nothing. */
export const USUAL_TOLERANCES: ToleranceSettings = toleranceSettings();

/** What a spec says of tolerances that nobody stated. */
export const USUAL_SOURCE = 'common practice, no source: the usual tolerance of such a measure';

/** Girths: 1/4 in (0.6 cm) below a step of 1 in, 3/8 (1 cm) at 1 in, 1/2 (1.2 cm) at 1 1/2 in and over. */
const BY_STEP = [
  { step: toMillimeters(3 / 2, 'in'), in: toMillimeters(1 / 2, 'in'), metric: 12 },
  { step: toMillimeters(1, 'in'), in: toMillimeters(3 / 8, 'in'), metric: 10 },
  { step: 0, in: toMillimeters(1 / 4, 'in'), metric: 6 },
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
  const byStep = BY_STEP.find((limit) => step >= limit.step - SAME_STEP)?.[settings.market] ?? 0;
  const all = group === 'girth' && settings.girth === 0 ? byStep : settings[group];
  const own = taken === 'flat' ? all / 2 : all;
  return { minus: own, plus: own };
}
