/** A default as each market has it: round in centimeters, or round in inches. */
import type { LengthUnit } from '../units';

/** A default with its unit: one for every chart, or one for metric charts and one for inch charts. */
export type MarketValue = string | { readonly metric: string; readonly inch: string };

/** The default for a chart written in `unit`. */
export function marketValue(value: MarketValue, unit: LengthUnit): string {
  if (typeof value === 'string') return value;
  return unit === 'in' ? value.inch : value.metric;
}

/** Both defaults, for a reader who has named no chart: `2 cm; in a chart in inches 3/4 in`. */
export function marketValues(value: MarketValue): string {
  if (value === NO_LENGTH) return '0';
  return typeof value === 'string' ? value : `${value.metric}; in a chart in inches ${value.inch}`;
}

/** A length for metric charts, and the one that a chart in inches has for it. */
export function both(metric: string, inch: string): MarketValue {
  return { metric, inch };
}

/** Nothing, in the unit of the chart. */
export const NO_LENGTH: MarketValue = both('0 cm', '0 in');

/** A default as a table has it: nothing where it is blank, and one for every chart where `inch` is. */
export function typedValue(metric: string, inch: string): MarketValue {
  if (metric === '') return NO_LENGTH;
  return inch === '' ? metric : both(metric, inch);
}
