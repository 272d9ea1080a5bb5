/** Coordinates that are rounded up or down together where that holds a seam best. */
import type { Piece } from '../pattern/piece';
import { RULES_AGREE } from '../tolerance';
import type { GridLines } from './grid-state';
import type { RuledPattern } from './ruled-points';

/**
 * Every coordinate by itself, those of one dart, and those that move alike: in a piece, and as points
 * of one name in all pieces, as a lining goes with its panel. `moves` are mm from the base.
 */
export function triedTogether(
  { coordinates, places }: RuledPattern,
  pieces: readonly Piece[],
  lines: readonly GridLines[],
  moves: readonly number[],
): readonly (readonly number[])[] {
  const isFree = (c: number): boolean => lines[c]?.lower !== lines[c]?.upper;
  const groups = new Map<string, number[]>();
  const put = (group: string, c: number): void => {
    const found = groups.get(group);
    if (found === undefined) groups.set(group, [c]);
    else found.push(c);
  };
  coordinates.forEach(({ piece, point, axis }, c) => {
    if (!isFree(c)) return;
    put(`${c}`, c);
    const alike = `${axis} ${Math.round((moves[c] as number) / RULES_AGREE)}`;
    put(`piece ${piece} ${alike}`, c);
    put(`point ${pieces[piece]?.plan.pointNames[point] ?? ''} ${alike}`, c);
  });
  pieces.forEach(({ plan }, p) => {
    for (const dart of plan.darts)
      for (const name of [dart.from, dart.tip, dart.to]) {
        const x = places[p]?.[plan.index.get(name) ?? -1] ?? -1;
        for (const c of [x, x + 1])
          if (x >= 0 && isFree(c)) put(`dart ${p} ${dart.name} ${c - x}`, c);
      }
  });
  return [...new Map([...groups.values()].map((set) => [set.join(), set])).values()];
}
