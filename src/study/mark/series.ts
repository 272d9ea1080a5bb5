/** The cells of a sheet as series: one point along one axis over all sizes, beside the key. */
import type { SizeChart } from '../../chart/size-chart';
import { cellValues } from '../../rule-sheet/cell-values';
import type { Axis, Form, RuleSheet } from '../../rule-sheet/rule-sheet';
import { SAME_PLACE } from '../../tolerance';
import type { AnswerKey, PointKey } from './answer-key';
import { asSteps } from '../../rule-sheet/moves-and-steps';

/** Which series it is: the same in any convention. */
export interface SeriesName {
  readonly piece: string;
  readonly point: string;
  readonly axis: Axis;
  readonly form: Form;
}

/** `undefined` where the sheet has a blank or no cell; mm, one a size. */
export interface Series extends SeriesName {
  readonly given: readonly (number | undefined)[];
}

/**
 * The series of a sheet in the order in which it names them; formulas are worked out with `chart`.
 * Throws what formulas throw.
 */
export function seriesOf(
  sheet: RuleSheet,
  key: AnswerKey,
  chart: SizeChart | undefined,
): readonly Series[] {
  const found = new Map<string, SeriesName & { given: (number | undefined)[] }>();
  for (const cell of sheet.cells) {
    const { piece, point, axis, form } = cell;
    const name: SeriesName = { piece, point, axis, form };
    const series = found.get(seriesId(name)) ?? { ...name, given: key.sizes.map(() => undefined) };
    const values = cellValues(cell, { labels: key.sizes, base: key.base }, chart);
    series.given = series.given.map((given, i) => values[i] ?? given);
    found.set(seriesId(name), series);
  }
  return [...found.values()];
}

/** A text that tells a series from all others of a sheet. */
export function seriesId({ piece, point, axis, form }: SeriesName): string {
  return `${piece}.${point} ${form} ${axis}`;
}

/** How a row of a sheet is called, such as `front.side_waist dx` or `front.side_waist step_dx`. */
export function rowName({ piece, point, axis, form }: SeriesName): string {
  return `${piece}.${point} ${form === 'step' ? 'step_' : ''}d${axis}`;
}

/** The point of a series in the key. Throws a RangeError if the key has none. */
export function keyPoint(key: AnswerKey, { piece, point }: SeriesName): PointKey {
  const found = key.points.get(`${piece}.${point}`);
  if (found === undefined) throw new RangeError(`the key has no ${piece}.${point}`);
  return found;
}

/** What the key has for a series, in the form of the series. */
export function rightValues(key: AnswerKey, name: SeriesName): readonly number[] {
  return inForm(keyPoint(key, name).moves[name.axis], name, key.base);
}

/** Places of the cells that are given and differ from the key by more than the tolerance. */
export function wrongSizes(key: AnswerKey, series: Series, tolerance: number): readonly number[] {
  const right = rightValues(key, series);
  return series.given.flatMap((mm, i) =>
    mm === undefined || Math.abs(mm - (right[i] ?? NaN)) <= tolerance + SAME_PLACE ? [] : [i],
  );
}

/** Moves, one a size, in the form of a series. */
export function inForm(
  moves: readonly number[],
  { form }: SeriesName,
  base: number,
): readonly number[] {
  return form === 'step' ? asSteps(moves, base) : moves;
}
