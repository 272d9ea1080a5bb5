/** Usual tolerances of finished measurements, where neither a style nor a list states them. */
import { marketValue } from '../draft/market-value';
import type { Market } from '../draft/girth-tolerance';
import { girthTolerance } from '../draft/girth-tolerance';
import { COMMON_PARAMETERS } from '../draft/parameter-table';
import { parseLength } from '../table/number-cell';
import type { LengthUnit } from '../units';
import type { MeasureGroup, Taken, Tolerance } from './spec';

/** What a style sets, in mm; zero leaves a girth to its grade step, as the `market` has it. */
export type ToleranceSettings = Readonly<Record<MeasureGroup, number>> & {
  readonly market: Market;
};

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
  const text = COMMON_PARAMETERS.find(({ name }) => name === parameter)?.value ?? '';
  return parseLength(marketValue(text, unit), unit) ?? NaN;
}

/** Those that a block has by itself, for any pattern whose style or list says nothing. */
export const USUAL_TOLERANCES: ToleranceSettings = toleranceSettings();

/** What a spec says of tolerances that nobody stated. */
export const USUAL_SOURCE = 'common practice, no source: the usual tolerance of such a measure';

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
  const byStep = girthTolerance(step, settings.market);
  const all = group === 'girth' && settings.girth === 0 ? byStep : settings[group];
  const own = taken === 'flat' ? all / 2 : all;
  return { minus: own, plus: own };
}
