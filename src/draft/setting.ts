/** A parameter set to a value, by a style, a style file or a caller. */
import type { LengthUnit } from '../units';
import type { MarketValue } from './market-value';

/** One parameter as a style or a caller sets it: a number with or without unit, or a formula. */
export interface Setting {
  readonly parameter: string;
  /** What a preset sets may follow the unit of the chart. */
  readonly value: MarketValue;
  /** Why this value: shown beside the parameter. */
  readonly note: string;
  /** Where it was written, for messages. */
  readonly place: { readonly file?: string; readonly row?: number; readonly field?: string };
  /** Unit of a bare number; the chart's where it is not given. */
  readonly unit?: LengthUnit;
}
