/** Lines whose ends move alike in the exact grade, so that they should do so on the grid too. */
import type { Piece, PiecePlan } from '../pattern/piece';
import { SAME_PLACE } from '../tolerance';
import type { GridLines, GridSum } from './grid-state';
import type { Levels } from './levels';
import type { RuledPattern } from './ruled-points';

/** How much a millimeter by which a line turns counts beside one by which a seam is off. */
const TURN_WEIGHT = 1 / 10;

/**
 * One for each line of an outline, dart or mark and each axis along which both ends are as far from
 * their grid lines: off by as much as one end goes up where the other goes down, which turns the line.
 */
export function alikeSums(
  { places }: RuledPattern,
  { of }: Levels,
  pieces: readonly Piece[],
  lines: readonly GridLines[],
): readonly GridSum[] {
  return pieces.flatMap(({ plan }, p) =>
    linesOf(plan).flatMap(([from, to]) =>
      [0, 1].flatMap((axis): GridSum[] => {
        const [a = -1, b = -1] = [from, to].map((name) => {
          const place = places[p]?.[plan.index.get(name) ?? -1] ?? -1;
          return place < 0 ? -1 : (of[place + axis] as number);
        });
        const [first, second] = [lines[a], lines[b]];
        if (first === undefined || second === undefined || first.lower === first.upper) return [];
        if (a === b) return [];
        if (Math.abs(first.lower - second.lower) > SAME_PLACE) return [];
        const slopes = [[a, 1] as const, [b, -1] as const];
        return [{ slopes, tolerance: SAME_PLACE, weight: TURN_WEIGHT }];
      }),
    ),
  );
}

function linesOf({ outline, marks }: PiecePlan): readonly (readonly [string, string])[] {
  return [
    ...outline.flatMap((edge): (readonly [string, string])[] =>
      edge.kind === 'dart'
        ? [
            [edge.from, edge.tip],
            [edge.tip, edge.to],
          ]
        : [[edge.from, edge.to]],
    ),
    ...marks.flatMap(({ through }) =>
      through.slice(1).map((to, i) => [through[i] ?? '', to] as const),
    ),
  ];
}
