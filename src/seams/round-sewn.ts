/** Rules rounded so that what is sewn still holds: every size by itself, from the base. */
import type { Point } from '../geometry/point';
import { subtract } from '../geometry/point';
import { roundTo } from '../grade/rounding';
import type { GradeRules } from '../grade/rules';
import { applyRules } from '../grade/rules';
import type { Piece } from '../pattern/piece';
import type { SeamPair } from '../pattern/seam-pair';
import { SAME_PLACE } from '../tolerance';
import { alikeSums } from './alike-sums';
import type { GridLines, GridSum } from './grid-state';
import { chooseGrid } from './grid-choice';
import { lineLength, lineSlope } from './lengthed-line';
import type { Levels } from './levels';
import { levelsOf } from './levels';
import type { RuledPattern } from './ruled-points';
import { movedPieces, ruledPattern } from './ruled-points';
import type { SewnSums } from './sewn-sums';
import { sewnSums } from './sewn-sums';
import { triedTogether } from './tried-together';

/** Lengths do not quite follow their slopes, so what was chosen is measured and chosen again. */
const MOST_MEASURED = 3;

/**
 * Rounds cumulative moves to multiples of `step` mm: what a ruler reads off, corners, notches, ends and
 * tips of darts, to one of the two grid lines beside it, the nearest unless a seam, a girth or the legs
 * of a dart would part; what stands on one line square to an axis in the base and in the size stays on
 * one; handles of curves and folds of darts go with them and are on no grid. The base stays; no size
 * knows of another.
 */
export function roundSewn(
  base: readonly Piece[],
  pairs: readonly SeamPair[],
  rules: GradeRules,
  step: number,
): GradeRules {
  const sewn = sewnSums(base, pairs);
  const ruled = ruledPattern(base);
  return {
    base: rules.base,
    moves: applyRules(base, rules).map((exact, size) => {
      const moves = rules.moves[size] ?? [];
      return size === rules.base ? moves : roundedMoves(base, exact, moves, { sewn, ruled, step });
    }),
  };
}

interface Rounding {
  readonly sewn: SewnSums;
  readonly ruled: RuledPattern;
  readonly step: number;
}

function roundedMoves(
  base: readonly Piece[],
  exact: readonly Piece[],
  moves: readonly (readonly Point[])[],
  { sewn, ruled, step }: Rounding,
): readonly (readonly Point[])[] {
  const levels = levelsOf(base, exact, ruled);
  const own = levels.members.map(([c = -1]) => {
    const { piece = -1, point = -1, axis = 'x' } = ruled.coordinates[c] ?? {};
    return moves[piece]?.[point]?.[axis] ?? 0;
  });
  const nearest = own.map((move) => roundTo(move, step));
  const lines = own.map((move, l): GridLines => ({
    ...linesBeside((nearest[l] as number) - move, step),
    count: levels.members[l]?.length ?? 0,
  }));
  const onGrid = (chosen: readonly boolean[]): readonly number[] => {
    const rounded = own.map((move, l) => {
      const { lower, upper } = lines[l] as GridLines;
      return roundTo(move + (chosen[l] ? upper : lower), step);
    });
    return levels.of.map((l) => rounded[l] as number);
  };
  const placed = (chosen: readonly boolean[]): readonly Piece[] =>
    movedPieces(base, exact, ruled, onGrid(chosen));

  const lengths = sewn.lines.map((line) => lineLength(exact, line));
  const missed = (pieces: readonly Piece[]): readonly number[] => {
    const off = sewn.lines.map((line, i) => lineLength(pieces, line) - (lengths[i] as number));
    return sewn.sums.map(({ terms }) =>
      terms.reduce((sum, { line, times }) => sum + times * (off[line] as number), 0),
    );
  };
  const alike = alikeSums(ruled, levels, exact, lines);
  const sums = [...slopedSums(sewn, ruled, levels, exact), ...alike];
  const sets = triedTogether(ruled, levels, exact, lines, own);

  let chosen: readonly boolean[] = own.map((move, l) => (nearest[l] as number) > move);
  let pieces = placed(chosen);
  let best = { cost: Infinity, pieces };
  for (let k = 0; ; k++) {
    const off = [...missed(pieces), ...offSums(alike, lines, chosen)];
    const cost = totalCost(sums, off);
    if (cost < best.cost) best = { cost, pieces };
    if (k === MOST_MEASURED) break;
    const next = chooseGrid(lines, sums, sets, { chosen, missed: off });
    if (next.every((upper, l) => upper === chosen[l])) break;
    chosen = next;
    pieces = placed(chosen);
  }
  return best.pieces.map(({ points }, p) =>
    points.map((to, i) => {
      const move = subtract(to, base[p]?.points[i] as Point);
      if ((ruled.places[p]?.[i] ?? -1) < 0) return move;
      return { x: roundTo(move.x, step), y: roundTo(move.y, step) };
    }),
  );
}

/** mm by which sums of levels are off with these grid lines chosen. */
function offSums(
  sums: ReturnType<typeof alikeSums>,
  lines: readonly GridLines[],
  chosen: readonly boolean[],
): readonly number[] {
  return sums.map(({ slopes }) =>
    slopes.reduce((sum, [l, slope]) => {
      const { lower, upper } = lines[l] as GridLines;
      return sum + slope * (chosen[l] ? upper : lower);
    }, 0),
  );
}

/**
 * `off` leads to the nearest grid line; the other lies a step beyond where the level belongs. A level on
 * a grid line has no other, even if only one of its coordinates is there to the last digit, as the stack
 * point is on zero.
 */
function linesBeside(off: number, step: number): Omit<GridLines, 'count'> {
  if (Math.abs(off) <= SAME_PLACE) return { lower: off, upper: off };
  return off > 0 ? { lower: off - step, upper: off } : { lower: off, upper: off + step };
}

function slopedSums(
  { lines, sums }: SewnSums,
  { places }: RuledPattern,
  { of }: Levels,
  exact: readonly Piece[],
): readonly GridSum[] {
  const slopes = lines.map((line) => {
    const { x, y } = lineSlope(exact, line);
    const ends = [places[line.piece]?.[line.from] ?? -1, places[line.piece]?.[line.to] ?? -1];
    return ends.flatMap((c, end): (readonly [number, number])[] => {
      const sign = end === 0 ? -1 : 1;
      return c < 0
        ? []
        : [
            [of[c] as number, sign * x],
            [of[c + 1] as number, sign * y],
          ];
    });
  });
  return sums.map(({ terms, tolerance, weight }) => ({
    slopes: terms.flatMap(({ line, times }) =>
      (slopes[line] ?? []).map(([l, slope]) => [l, times * slope] as const),
    ),
    tolerance,
    weight,
  }));
}

function totalCost(sums: readonly GridSum[], missed: readonly number[]): number {
  return sums.reduce((sum, { tolerance, weight }, k) => {
    const excess = Math.max(0, Math.abs(missed[k] as number) - tolerance);
    return sum + weight * excess * excess;
  }, 0);
}
