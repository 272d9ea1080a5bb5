/** A cause of the whole sheet: one habit that turns every number of it, as a way to read the sheet. */
import type { AnswerKey } from './answer-key';
import type { Series } from './series';

/** A sheet with the key that it is held against. */
export interface Reading {
  readonly key: AnswerKey;
  readonly series: readonly Series[];
  /** Cells that are given, say something, and have no place in this reading. */
  readonly left: number;
}

/** One habit that a whole sheet may be written in, tried before any slip. */
export interface SheetCause {
  /** The same for the same cause in any sheet of the chart, such as `base 14`. */
  readonly id: string;
  /** What was done, in words. */
  readonly words: string;
  /** How it is mended, in words. */
  readonly advice: string;
  /** The sheet as it is right if this is the cause and nothing else is wrong. */
  readonly read: (key: AnswerKey, series: readonly Series[]) => Reading;
}

/** The sheet as it stands. */
export function asItStands(key: AnswerKey, series: readonly Series[]): Reading {
  return { key, series, left: 0 };
}

/** A reading that puts every series into its place; `place` gives the cells of one series. */
export function placing(place: (series: Series, base: number) => Series): SheetCause['read'] {
  return (key, series) => {
    const placed = series.map((one) => place(one, key.base));
    const told = (all: readonly Series[]): number =>
      all.reduce((sum, { given }) => sum + given.filter((mm) => (mm ?? 0) !== 0).length, 0);
    return { key, series: placed, left: Math.max(0, told(series) - told(placed)) };
  };
}
