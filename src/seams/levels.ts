/** Coordinates of a piece that lie on one line square to an axis, and are rounded as one. */
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
  const axes = new Map<string, number[]>();
  coordinates.forEach(({ piece, axis }, c) => {
    const key = `${piece} ${axis}`;
    const found = axes.get(key);
    if (found === undefined) axes.set(key, [c]);
    else found.push(c);
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
  if (coordinates.length === 1) return [coordinates];
  const lines: number[][] = [];
  let last = -Infinity;
  for (const c of coordinates.toSorted((a, b) => (places[a] ?? NaN) - (places[b] ?? NaN))) {
    const place = places[c] ?? NaN;
    if (place - last <= SAME_PLACE) lines.at(-1)?.push(c);
    else lines.push([c]);
    last = place;
  }
  return lines;
}
