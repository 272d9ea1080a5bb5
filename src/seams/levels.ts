/** Coordinates of a piece that lie on one line square to an axis, and are rounded as one. */
import { runsOf } from '../lists/runs';
import { grouped } from '../lists/grouped';
import type { Piece } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';
import type { RuledPattern } from './ruled-points';

/**
 * The levels of a pattern in one size: a fold, a center line, the line of the hip, a straight hem. A
 * coordinate that shares its line with no other is a level by itself.
 */
export interface Levels {
  /** Places among the ruled coordinates, level by level, in their order; together they are all. */
  readonly members: readonly (readonly number[])[];
  /** For each ruled coordinate the place of its level. */
  readonly of: readonly number[];
}

/**
 * Two coordinates of a piece along one axis are of one level where they are the same in the base and
 * the same in the size. Other sizes have no say in it, so that a size is rounded as it would be alone.
 */
export function levelsOf(
  base: readonly Piece[],
  exact: readonly Piece[],
  { coordinates }: RuledPattern,
): Levels {
  const places = (pieces: readonly Piece[]): readonly number[] =>
    coordinates.map(({ piece, point, axis }) => pieces[piece]?.points[point]?.[axis] ?? NaN);
  const [inBase, inSize] = [places(base), places(exact)];
  const axes = grouped([...coordinates.keys()], (c) => {
    const { piece, axis } = coordinates[c] ?? {};
    return `${piece} ${axis}`;
  });
  const members = [...axes.values()]
    .flatMap((all) => onOneLine(all, inBase))
    .flatMap((line) => onOneLine(line, inSize))
    .map((level) => level.toSorted((a, b) => a - b))
    .toSorted(([a = 0], [b = 0]) => a - b);
  const of = coordinates.map(() => -1);
  members.forEach((level, l) => {
    for (const c of level) of[c] = l;
  });
  return { members, of };
}

/** The coordinates parted wherever the next one up stands farther on; `places` are those of all. */
function onOneLine(
  coordinates: readonly number[],
  places: readonly number[],
): readonly (readonly number[])[] {
  const placeOf = (c: number): number => places[c] ?? NaN;
  return runsOf(
    coordinates.toSorted((a, b) => placeOf(a) - placeOf(b)),
    (c, last) => placeOf(c) - placeOf(last) <= SAME_PLACE,
  );
}
