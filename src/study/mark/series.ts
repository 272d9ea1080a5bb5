/** The cells of a sheet as series: one point along one axis over all sizes, beside the key. */
import type { SizeChart } from '../../chart/size-chart';
import { InputError } from '../../errors';
import { incrementFormula } from '../../rule-sheet/increment-formula';
import type { Axis, Form, RuleCell, RuleSheet } from '../../rule-sheet/rule-sheet';
import type { AnswerKey, PointKey } from './answer-key';
import { asSteps } from './answer-key';

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
 * Throws InputError `piece-unknown`, `point-unknown` or `size-unknown` with the place of what the key does not have,
 * and what formulas throw.
 */
export function seriesOf(
  sheet: RuleSheet,
  key: AnswerKey,
  chart: SizeChart | undefined,
): readonly Series[] {
  const found = new Map<string, SeriesName & { given: (number | undefined)[] }>();
  for (const cell of sheet.cells) {
    const { piece, point, size, axis, form, places } = cell;
    if (!key.points.has(`${piece}.${point}`)) throw unknownPoint(key, cell);
    const index = key.sizes.indexOf(size);
    if (index < 0 && size !== '')
      throw new InputError('size-unknown', {
        what: 'the chart has no such size',
        allowed: key.sizes.join(', '),
        got: size,
        place: places.size,
      });
    const name: SeriesName = { piece, point, axis, form };
    const series = found.get(seriesId(name)) ?? { ...name, given: key.sizes.map(() => undefined) };
    const values = valuesOf(cell, key, chart);
    if (size === '') series.given = [...values];
    else series.given[index] = values[index];
    found.set(seriesId(name), series);
  }
  return [...found.values()];
}

/** What a cell gives for every size: a number of one size for all of them, a formula for each. */
function valuesOf(
  { form, mm, formula, size, places }: RuleCell,
  { sizes, base }: AnswerKey,
  chart: SizeChart | undefined,
): readonly (number | undefined)[] {
  if (formula !== undefined) {
    const moves = incrementFormula(formula, places.cell, chart)(base);
    return form === 'step' ? asSteps(moves, base) : moves;
  }
  if (mm === undefined || size !== '') return sizes.map(() => mm);
  // The same growth from each size to the next: seen from the base, smaller sizes shrink by it.
  return sizes.map((_, i) => (i === base ? 0 : Math.sign(i - base) * mm));
}

/** A name that no other series of the sheet has, such as `front.side_waist move x`. */
export function seriesId({ piece, point, axis, form }: SeriesName): string {
  return `${piece}.${point} ${form} ${axis}`;
}

/** The point of a series in the key. Throws a RangeError if the key has none. */
export function keyPoint(key: AnswerKey, { piece, point }: SeriesName): PointKey {
  const found = key.points.get(`${piece}.${point}`);
  if (found === undefined) throw new RangeError(`the key has no ${piece}.${point}`);
  return found;
}

/** What the key has for a series, in the form of the series. */
export function rightValues(key: AnswerKey, name: SeriesName): readonly number[] {
  const moves = keyPoint(key, name).moves[name.axis];
  return name.form === 'step' ? asSteps(moves, key.base) : moves;
}

function unknownPoint({ points }: AnswerKey, { piece, point, places }: RuleCell): InputError {
  const known = [...points.values()];
  const ofPiece = known.filter((own) => own.piece === piece);
  if (ofPiece.length > 0)
    return new InputError('point-unknown', {
      what: 'the piece has no such point',
      allowed: ofPiece.map((own) => own.point).join(', '),
      got: point,
      place: places.point,
    });
  return new InputError('piece-unknown', {
    what: 'the skirt has no such piece',
    allowed: [...new Set(known.map((own) => own.piece))].join(', '),
    got: piece,
    place: places.piece,
  });
}
