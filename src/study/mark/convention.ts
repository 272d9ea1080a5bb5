/** What a sheet may choose for itself: the zero of each piece, and which way its axes run. */
import type { Axis } from '../../rule-sheet/rule-sheet';
import type { AnswerKey, Axes, PointKey } from './answer-key';

/** A choice, not an error: the graded shapes are the same, only their numbers differ. */
export interface Convention {
  /**
   * Zero of each piece: one point, or two for the place halfway between them. Pieces that are not
   * named keep the key's zero.
   */
  readonly zeros: ReadonlyMap<string, readonly string[]>;
  /** True where y runs up toward the waist. */
  readonly up: boolean;
  /** Pieces drawn mirrored: x runs toward the center line. */
  readonly mirrored: ReadonlySet<string>;
}

/** The engine's: zero where the key has it, x away from the center line, y down. */
export const OWN_CONVENTION: Convention = { zeros: new Map(), up: false, mirrored: new Set() };

/** 1 where an axis of a piece runs as the key's does, -1 where it runs against it. */
export function directionOf(convention: Convention, piece: string): Axes<1 | -1> {
  return { x: convention.mirrored.has(piece) ? -1 : 1, y: convention.up ? -1 : 1 };
}

/** The key as a right sheet in this convention would have it. */
export function inConvention(key: AnswerKey, convention: Convention): AnswerKey {
  const points = [...key.points].map(([name, own]): [string, PointKey] => {
    const direction = directionOf(convention, own.piece);
    const zeros = zerosOf(key, convention, own.piece);
    const slopes = (axis: Axis): ReadonlyMap<string, number> => {
      const all = [own, ...zeros].flatMap((point) => [...(point?.slopes[axis].keys() ?? [])]);
      return new Map(
        [...new Set(all)].map((measurement) => {
          const slope = (point: PointKey | undefined): number =>
            point?.slopes[axis].get(measurement) ?? 0;
          return [measurement, direction[axis] * (slope(own) - mean(zeros.map(slope)))];
        }),
      );
    };
    const place = (axis: Axis): number =>
      direction[axis] * (own.place[axis] - mean(zeros.map((zero) => zero?.place[axis] ?? 0)));
    return [
      name,
      {
        ...own,
        moves: {
          x: movesInConvention(key, own, convention, 'x'),
          y: movesInConvention(key, own, convention, 'y'),
        },
        slopes: { x: slopes('x'), y: slopes('y') },
        place: { x: place('x'), y: place('y') },
      },
    ];
  });
  return { ...key, points: new Map(points) };
}

/** The moves of one point along an axis as a right sheet in this convention would have them, mm. */
export function movesInConvention(
  key: AnswerKey,
  own: PointKey,
  convention: Convention,
  axis: Axis,
): readonly number[] {
  const direction = directionOf(convention, own.piece)[axis];
  const zeros = zerosOf(key, convention, own.piece);
  return own.moves[axis].map(
    (move, i) =>
      // Adding zero turns a negative zero into a plain one.
      direction * (move - mean(zeros.map((zero) => zero?.moves[axis][i] ?? 0))) + 0,
  );
}

function zerosOf(
  key: AnswerKey,
  convention: Convention,
  piece: string,
): readonly (PointKey | undefined)[] {
  return (convention.zeros.get(piece) ?? []).map((zero) => key.points.get(`${piece}.${zero}`));
}

/** Zero for no values: a piece without a zero of its own keeps the key's. */
function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value / values.length, 0);
}
