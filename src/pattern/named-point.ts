/** Points and edges of a pattern by the names of their pieces and their own, as people write them. */
import type { InputProblem } from '../errors';
import { InputError } from '../errors';
import { meantName, namesMeant } from '../table/name-match';
import { MOST_NEAR, listedNames } from '../table/near-names';
import { excerpt } from '../table/tidy-text';
import type { TypedCell } from '../table/typed-table';
import type { PiecePlan } from './piece';

/** A point of a piece. */
export interface PointName {
  readonly piece: string;
  readonly point: string;
}

/**
 * Piece and point from two cells, or from one as in `front.side_hip`. Throws InputError
 * `sheet-malformed` where one of them is not named, `piece-unknown` and `point-unknown`.
 */
export function namedPoint(
  piece: TypedCell,
  point: TypedCell,
  plans: readonly PiecePlan[],
): PointName {
  const inOne = piece.text === '';
  const [first, second] = inOne ? partedName(point, plans) : [piece.text, point.text];
  if (first === '' || second === '') {
    throw new InputError('sheet-malformed', {
      what: 'a point is not named with its piece',
      ...wholeNames(inOne ? point.text : second, plans),
      got: excerpt(inOne ? point.text : `${first}, ${second}`),
      place: point.place,
    });
  }
  const pieceCell = { text: first, place: inOne ? point.place : piece.place };
  const plan = namedPiece(pieceCell, plans);
  // As the pattern spells it; a look through all its names for each row would be long for long sheets.
  if (plan.index.has(second)) return { piece: plan.name, point: second };
  // A sheet with a column for the piece may have the whole name in the other all the same.
  const dot = second.indexOf('.');
  const isWhole = matches(second.slice(0, Math.max(0, dot)), plan);
  const name = meantName(
    { text: isWhole ? second.slice(dot + 1).trim() : second, place: point.place },
    plan.pointNames,
    {
      code: 'point-unknown',
      what: `the piece ${plan.name} has no such point`,
      allowed: listedNames(plan.pointNames.filter((known) => !known.includes('.'))),
    },
  );
  return { piece: plan.name, point: name };
}

/**
 * The same where no pattern is known: the names as they are typed. Throws InputError `sheet-malformed` where
 * one of them is not named.
 */
export function pointAsTyped(piece: TypedCell, point: TypedCell): PointName {
  const [first = '', second = ''] =
    piece.text === ''
      ? point.text.split(/\.(.*)/su).map((part) => part.trim())
      : [piece.text, point.text];
  if (first !== '' && second !== '') return { piece: first, point: second };
  throw new InputError('sheet-malformed', {
    what: 'a point is not named with its piece',
    allowed: 'names such as front and side_hip, or front.side_hip',
    orField: 'pattern',
    got: excerpt(point.text || piece.text),
    place: point.place,
  });
}

/** Piece and point of those whose point is meant, or how they are named. */
function wholeNames(
  point: string,
  plans: readonly PiecePlan[],
): Pick<InputProblem, 'near' | 'allowed'> {
  const near = plans.flatMap(({ name, pointNames }) =>
    namesMeant(point, pointNames).map((own) => `${name}.${own}`),
  );
  return near.length > 0
    ? { near: near.slice(0, MOST_NEAR) }
    : { allowed: 'names of the pattern, such as front and side_hip, or front.side_hip' };
}

/** The piece of this name. Throws InputError `piece-unknown`. */
export function namedPiece(cell: TypedCell, plans: readonly PiecePlan[]): PiecePlan {
  const names = plans.map(({ name }) => name);
  const found = meantName(cell, names, {
    code: 'piece-unknown',
    what: 'the pattern has no such piece',
  });
  return plans[names.indexOf(found)] as PiecePlan;
}

function matches(text: string, { name }: PiecePlan): boolean {
  return namesMeant(text, [name]).length > 0;
}

/** `front.side_hip`, or without the point `front side hip`, where only one point can be meant. */
function partedName(
  { text }: TypedCell,
  plans: readonly PiecePlan[],
): readonly [piece: string, point: string] {
  const dot = text.indexOf('.');
  if (dot >= 0) return [text.slice(0, dot).trim(), text.slice(dot + 1).trim()];
  const whole = plans.flatMap(({ name, pointNames }) =>
    pointNames.map((point) => [name, point] as const),
  );
  const meant = namesMeant(
    text,
    whole.map(([piece, point]) => `${piece}.${point}`),
  );
  const [found] = meant.length === 1 ? whole.filter((name) => name.join('.') === meant[0]) : [];
  return found ?? ['', text];
}
