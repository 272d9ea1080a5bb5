/** The verdict on every cell of a sheet. */
import type { Axis, Form } from '../../rule-sheet/rule-sheet';
import { SAME_PLACE, TYPED_DECIMALS } from '../../tolerance';
import type { AnswerKey } from './answer-key';
import type { Series, SeriesName } from './series';
import { rightValues, seriesId } from './series';

/** `missing` is a cell that was asked for and is not there or blank. */
export type Verdict = 'right' | 'wrong' | 'missing';

/** One cell with its verdict. */
export interface MarkedCell {
  readonly piece: string;
  readonly point: string;
  readonly size: string;
  readonly axis: Axis;
  readonly form: Form;
  readonly verdict: Verdict;
  /** mm as handed in; undefined where missing. */
  readonly given: number | undefined;
  /** mm by the key, in the sheet's convention. */
  readonly right: number;
}

/**
 * All cells that are given, and those of the asked points that are not. The base's cells are zero by
 * definition: they are asked of nobody and told only where they are wrong.
 */
export function markedCells(
  key: AnswerKey,
  series: readonly Series[],
  asked: readonly { readonly piece: string; readonly point: string }[],
  tolerance: number,
): readonly MarkedCell[] {
  const form: Form = series.some((one) => one.form === 'move') ? 'move' : 'step';
  // A sheet may give some rows in moves and others in steps.
  const formOf = (row: Omit<SeriesName, 'form'>): Form =>
    (['move', 'step'] as const).find((own) => handed.has(seriesId({ ...row, form: own }))) ?? form;
  const handed = new Map(series.map((one) => [seriesId(one), one]));
  const wanted = asked.flatMap(({ piece, point }): SeriesName[] => [
    { piece, point, axis: 'x', form: formOf({ piece, point, axis: 'x' }) },
    { piece, point, axis: 'y', form: formOf({ piece, point, axis: 'y' }) },
  ]);
  const wantedIds = new Set(wanted.map(seriesId));
  const all: readonly SeriesName[] = [
    ...wanted,
    ...series.filter((one) => !wantedIds.has(seriesId(one))),
  ];
  return all.flatMap((name) => {
    const right = rightValues(key, name);
    const given = handed.get(seriesId(name))?.given;
    return key.sizes.flatMap((size, i): MarkedCell[] => {
      const { piece, point, axis } = name;
      const cell = { piece, point, axis, form: name.form, size, right: right[i] ?? NaN };
      const mm = given?.[i];
      if (mm === undefined) {
        const missing = wantedIds.has(seriesId(name)) && i !== key.base;
        return missing ? [{ ...cell, verdict: 'missing', given: undefined }] : [];
      }
      const isRight = Math.abs(mm - cell.right) <= tolerance + SAME_PLACE;
      if (isRight && i === key.base) return [];
      return [{ ...cell, verdict: isRight ? 'right' : 'wrong', given: mm }];
    });
  });
}

/** Fewer right cells say little about how closely the sheet is written. */
const ENOUGH = 6;

/** How closely, in mm, a sheet is written: as its right cells that are not zero, or the tolerance. */
export function precisionOf(key: AnswerKey, series: readonly Series[], tolerance: number): number {
  const misses = series.flatMap((one) => {
    const right = rightValues(key, one);
    return one.given.flatMap((mm, i) => {
      const own = right[i] ?? NaN;
      const miss = Math.abs((mm ?? NaN) - own);
      return Math.abs(own) > tolerance && miss <= tolerance ? [miss] : [];
    });
  });
  return misses.length < ENOUGH
    ? tolerance
    : Math.min(tolerance, Math.max(...misses) + TYPED_DECIMALS);
}
