/** The cells of a sheet as series: one point along one axis over all sizes, beside the key. */
import { InputError } from '../errors';
import type { Axis, Form, RuleSheet } from '../handed-sheet/rule-sheet';
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
 * The series of a sheet in the order in which it names them. Throws InputError `point-unknown` or
 * `size-unknown` with the place of a cell that the key does not have.
 */
export function seriesOf(sheet: RuleSheet, key: AnswerKey): readonly Series[] {
  const found = new Map<string, SeriesName & { given: (number | undefined)[] }>();
  for (const { piece, point, size, axis, form, mm, place } of sheet.cells) {
    if (!key.points.has(`${piece}.${point}`)) throw unknownPoint(key, piece, point, place);
    const index = key.sizes.indexOf(size);
    if (index < 0)
      throw new InputError('size-unknown', {
        what: 'the chart has no such size',
        allowed: key.sizes.join(', '),
        got: size,
        place,
      });
    const name: SeriesName = { piece, point, axis, form };
    const series = found.get(seriesId(name)) ?? { ...name, given: key.sizes.map(() => undefined) };
    series.given[index] = mm;
    found.set(seriesId(name), series);
  }
  return [...found.values()];
}

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

function unknownPoint(
  key: AnswerKey,
  piece: string,
  point: string,
  place: InputError['place'],
): InputError {
  const ofPiece = [...key.points.values()].filter((candidate) => candidate.piece === piece);
  const pieces = new Set([...key.points.values()].map((candidate) => candidate.piece));
  return new InputError('point-unknown', {
    what: ofPiece.length === 0 ? 'the skirt has no such piece' : 'the piece has no such point',
    allowed: (ofPiece.length === 0
      ? [...pieces]
      : ofPiece.map((candidate) => candidate.point)
    ).join(', '),
    got: ofPiece.length === 0 ? piece : point,
    place,
  });
}
