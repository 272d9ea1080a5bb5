/** Finds the convention of a sheet: stated by the sheet or the caller, or recognized. */
import { SAME_PLACE } from '../../tolerance';
import type { Axis } from '../../rule-sheet/rule-sheet';
import type { AnswerKey } from './answer-key';
import type { Convention } from './convention';
import { OWN_CONVENTION, movesInConvention } from './convention';
import type { Series } from './series';
import { inForm, keyPoint, rightValues } from './series';
import type { StatedConvention } from './stated-convention';

/**
 * A convention must leave at most this share of the cells wrong that are wrong without it.
 * No tolerance: it is set by planted conventions.
 */
const CLEARS_UP = 0.5;

/**
 * A zero is recognized where its own cells are all zero and most wrong cells become right by it; an
 * axis against the key's where every cell that could tell is turned. One turned point is therefore
 * never taken for a convention.
 */
export function recognizeConvention(
  key: AnswerKey,
  series: readonly Series[],
  stated: StatedConvention,
  tolerance: number,
): Convention {
  const wrong = (convention: Convention, own: readonly Series[]): number =>
    own.reduce((sum, one) => sum + wrongCells(key, convention, one, tolerance), 0);
  const pieces = [...new Set(series.map(({ piece }) => piece))];
  const best = (up: boolean): Convention =>
    pieces.reduce<Convention>(
      (found, piece) => {
        const own = series.filter((one) => one.piece === piece);
        const zeros =
          stated.zero === undefined
            ? zeroCandidates(key, own)
            : statedZero(key, piece, stated.zero);
        const sides = turned(key, own, tolerance, 'x') ? [false, true] : [false];
        return choice(
          sides.flatMap((side) => zeros.map((zero) => withPiece(found, piece, zero, side))),
          (convention) => wrong(convention, own),
        );
      },
      { ...OWN_CONVENTION, up },
    );
  const ways =
    stated.up !== undefined
      ? [stated.up]
      : turned(key, series, tolerance, 'y')
        ? [false, true]
        : [false];
  return choice(ways.map(best), (convention) => wrong(convention, series));
}

/** The first of the candidates, unless another one clears up at least half of what is wrong. */
function choice(
  candidates: readonly Convention[],
  wrong: (convention: Convention) => number,
): Convention {
  const [first = OWN_CONVENTION, ...others] = candidates;
  let found = first;
  let least = CLEARS_UP * wrong(first);
  for (const candidate of least > 0 ? others : []) {
    const count = wrong(candidate);
    if (count < least || (count === least && found === first)) [found, least] = [candidate, count];
  }
  return found;
}

function withPiece(
  convention: Convention,
  piece: string,
  zero: readonly string[],
  mirrored: boolean,
): Convention {
  return {
    ...convention,
    zeros: zero.length === 0 ? convention.zeros : new Map([...convention.zeros, [piece, zero]]),
    mirrored: mirrored ? new Set([...convention.mirrored, piece]) : convention.mirrored,
  };
}

/** Cells of a series that differ from the key in a convention. */
function wrongCells(
  key: AnswerKey,
  convention: Convention,
  series: Series,
  tolerance: number,
): number {
  const moves = movesInConvention(key, keyPoint(key, series), convention, series.axis);
  const right = inForm(moves, series, key.base);
  return series.given.filter(
    (mm, i) => mm !== undefined && !(Math.abs(mm - (right[i] ?? NaN)) <= tolerance + SAME_PLACE),
  ).length;
}

/** The stated zero, if the piece has its points. */
function statedZero(
  key: AnswerKey,
  piece: string,
  points: readonly string[],
): readonly (readonly string[])[] {
  return [points.every((point) => key.points.has(`${piece}.${point}`)) ? points : []];
}

/** The middle of the hip line, where a piece grows to all sides. */
const MIDDLE = ['center_hip', 'side_hip'] as const;

/** Fewer points that move could be counted from any place, by a slip of their own. */
const TELLING_POINTS = 3;

/**
 * The key's own zero, points whose cells are all given as zero, the middle of the piece, and points
 * that the sheet leaves out. Where nothing moves at all, nothing was counted from anywhere.
 */
function zeroCandidates(key: AnswerKey, own: readonly Series[]): readonly (readonly string[])[] {
  const cellsOf = (name: string): readonly number[] =>
    own
      .filter(({ point }) => point === name)
      .flatMap(({ given }) => given.filter((mm) => mm !== undefined));
  const isStill = (name: string): boolean =>
    cellsOf(name).every((mm) => Math.abs(mm) <= SAME_PLACE);
  const given = [...new Set(own.map(({ point }) => point))].filter(
    (name) => cellsOf(name).length > 0,
  );
  const moved = given.filter((name) => !isStill(name));
  if (moved.length === 0) return [[]];
  const piece = own[0]?.piece ?? '';
  const middle = MIDDLE.every((point) => key.points.has(`${piece}.${point}`)) ? [MIDDLE] : [];
  const absent = [...key.points.values()]
    .filter((point) => point.piece === piece && !given.includes(point.point))
    .map(({ point }) => [point]);
  return [
    [],
    ...given.filter(isStill).map((point) => [point]),
    ...middle,
    ...(moved.length < TELLING_POINTS ? [] : absent),
  ];
}

/** True where at least two points tell the direction of an axis, and each of their cells is turned. */
function turned(key: AnswerKey, series: readonly Series[], tolerance: number, axis: Axis): boolean {
  const telling = series
    .filter((one) => one.axis === axis)
    .map((one) => {
      const right = rightValues(key, one);
      const cells = one.given.map((mm, i) => [mm ?? 0, right[i] ?? 0] as const);
      return { one, cells: cells.filter(([mm, key]) => Math.abs(mm * key) > tolerance ** 2) };
    })
    .filter(({ cells }) => cells.length > 0);
  const points = new Set(telling.map(({ one }) => keyPoint(key, one)));
  return points.size >= 2 && telling.every(({ cells }) => cells.every(([mm, own]) => mm * own < 0));
}
