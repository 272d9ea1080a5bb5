/** What of a sheet is asked for: its pieces, and of these all corners or the points that are named. */
import { InputError } from '../../errors';
import type { PointName } from '../../pattern/named-point';
import { namedPiece, namedPoint } from '../../pattern/named-point';
import type { RuleSheet } from '../../rule-sheet/rule-sheet';
import { listedNames } from '../../table/near-names';
import { namesMeant } from '../../table/name-match';
import { statedBy } from '../../table/statements';
import { isBlank } from '../../table/tidy-text';
import type { Reference } from './reference';

/** The pieces and points of a question. */
export interface Asked {
  readonly pieces: readonly string[];
  /** Each once, in the order of the pieces or of their naming. */
  readonly points: readonly PointName[];
  /** True where points were named: what else a sheet gives is not judged then. */
  readonly isPart: boolean;
}

/** What somebody who asks may name; the pieces otherwise stand in the sheet (`# pieces: front`), or are all panels. */
export interface Question {
  readonly pieces?: readonly string[];
  /** `front.side_waist`, or `side_waist` of every piece that is asked for. */
  readonly points?: readonly string[];
}

/** Throws InputError `piece-unknown`, `point-unknown` or `bad-option` for names that do not fit. */
export function askedOf(reference: Reference, sheet: RuleSheet, question: Question): Asked {
  const stated = piecesOf(reference, sheet, question.pieces);
  if (question.points === undefined) {
    const pieces = stated ?? reference.pieces;
    const points = pieces.flatMap((name) => reference.points.filter(({ piece }) => piece === name));
    return { pieces, points, isPart: false };
  }
  const named = question.points.flatMap((text) => pointsMeant(text, reference, stated));
  const points = [...new Map(named.map((one) => [`${one.piece}.${one.point}`, one])).values()];
  return { pieces: [...new Set(points.map(({ piece }) => piece))], points, isPart: true };
}

/** The pieces that are stated; undefined where none are. */
function piecesOf(
  { plans }: Reference,
  sheet: RuleSheet,
  wanted: readonly string[] | undefined,
): readonly string[] | undefined {
  const statement = statedBy(sheet, 'pieces');
  const stated = statement?.text.split(
    /[,;&+]|\sand\s/u.test(statement.text) ? /[,;&+]|\sand\s/u : /\s/u,
  );
  const place = wanted === undefined ? (statement?.place ?? {}) : { field: 'pieces' };
  return (wanted ?? stated?.filter((name) => !isBlank(name)))?.map(
    (name) => namedPiece({ text: name.trim(), place }, plans).name,
  );
}

/** One point, or one of each piece where its piece is not named. */
function pointsMeant(
  text: string,
  { plans, pieces }: Reference,
  stated: readonly string[] | undefined,
): readonly PointName[] {
  const place = { field: 'points' };
  const own = plans.filter(({ name }) => (stated ?? pieces).includes(name));
  const points = own.flatMap((plan) =>
    namesMeant(text, plan.pointNames).map((point) => ({ piece: plan.name, point })),
  );
  if (points.length > 0) return points;
  const point = namedPoint({ text: '', place }, { text, place }, plans);
  if (stated === undefined || stated.includes(point.piece)) return [point];
  throw new InputError('bad-option', {
    what: `the ${point.piece} is not among the pieces that are asked for`,
    allowed: `a point of ${listedNames(stated)}`,
    got: text,
    place,
  });
}
