/** Levels that are rounded up or down together where that holds a seam best. */
import type { Piece } from '../pattern/piece';
import { RULES_AGREE } from '../tolerance';
import type { GridLines } from './grid-state';
import type { Levels } from './levels';
import type { RuledPattern } from './ruled-points';

/**
 * Every level by itself, those of one dart, and those that move alike: in a piece, and as points of one
 * name in all pieces, as a lining goes with its panel. `moves` are those of the levels, mm from the base.
 */
export function triedTogether(
  { coordinates, places }: RuledPattern,
  { of }: Levels,
  pieces: readonly Piece[],
  lines: readonly GridLines[],
  moves: readonly number[],
): readonly (readonly number[])[] {
  const groups = new Map<string, Set<number>>();
  const put = (group: string, level: number): void => {
    const found = groups.get(group);
    if (found === undefined) groups.set(group, new Set([level]));
    else found.add(level);
  };
  const isFree = (level: number): boolean => lines[level]?.lower !== lines[level]?.upper;
  coordinates.forEach(({ piece, point, axis }, c) => {
    const level = of[c] as number;
    if (!isFree(level)) return;
    put(`${level}`, level);
    const alike = `${axis} ${Math.round((moves[level] as number) / RULES_AGREE)}`;
    put(`piece ${piece} ${alike}`, level);
    put(`point ${pieces[piece]?.plan.pointNames[point] ?? ''} ${alike}`, level);
  });
  pieces.forEach(({ plan }, p) => {
    for (const dart of plan.darts)
      for (const name of [dart.from, dart.tip, dart.to]) {
        const x = places[p]?.[plan.index.get(name) ?? -1] ?? -1;
        if (x < 0) continue;
        for (const axis of [0, 1]) {
          const level = of[x + axis] as number;
          if (isFree(level)) put(`dart ${p} ${dart.name} ${axis}`, level);
        }
      }
  });
  const sets = [...groups.values()].map((set) => [...set]);
  return [...new Map(sets.map((set) => [set.join(), set])).values()];
}
