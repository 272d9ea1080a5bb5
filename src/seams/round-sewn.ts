/** Rules rounded so that what is sewn still holds: every size by itself, from the base. */
import type { Point } from '../geometry/point';
import { subtract } from '../geometry/point';
import { roundTo } from '../grade/rounding';
import type { GradeRules } from '../grade/rules';
import { applyRules } from '../grade/rules';
import type { Piece } from '../pattern/piece';
import type { SeamPair } from '../pattern/seam-pair';
import { HALF_STEP } from '../tolerance';
import { alikeSums } from './alike-sums';
import type { GridLines, GridSum } from './grid-state';
import { chooseGrid } from './grid-choice';
import { lineLength, lineSlope } from './lengthed-line';
import type { RuledPattern } from './ruled-points';
import { placedAt, ruledPattern } from './ruled-points';
import type { SewnSums } from './sewn-sums';
import { sewnSums } from './sewn-sums';
import { triedTogether } from './tried-together';

/** Lengths do not quite follow their slopes, so what was chosen is measured and chosen again. */
const MOST_MEASURED = 3;

/**
 * Rounds cumulative moves to multiples of `step` mm: what a ruler reads off, corners, notches, ends and
 * tips of darts, to one of the two grid lines beside it, the nearest unless a seam, a girth or the legs
 * of a dart would part; handles of curves and folds of darts go with them and are on no grid. The base
 * stays; no size knows of another.
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
  const own = ruled.coordinates.map(({ piece, point, axis }) => moves[piece]?.[point]?.[axis] ?? 0);
  const nearest = own.map((move) => roundTo(move, step));
  const lines = own.map((move, c) => linesBeside((nearest[c] as number) - move, step));
  const onGrid = (chosen: readonly boolean[]): readonly number[] =>
    own.map((move, c) => {
      const { lower, upper } = lines[c] as GridLines;
      return roundTo(move + (chosen[c] ? upper : lower), step);
    });
  const placed = (chosen: readonly boolean[]): readonly Piece[] =>
    placedAt(base, exact, ruled, onGrid(chosen));

  const lengths = sewn.lines.map((line) => lineLength(exact, line));
  const missed = (pieces: readonly Piece[]): readonly number[] => {
    const off = sewn.lines.map((line, i) => lineLength(pieces, line) - (lengths[i] as number));
    return sewn.sums.map(({ terms }) =>
      terms.reduce((sum, { line, times }) => sum + times * (off[line] as number), 0),
    );
  };
  const alike = alikeSums(ruled, exact, lines);
  const sums = [...slopedSums(sewn, ruled, exact), ...alike];
  const sets = triedTogether(ruled, exact, lines, own);

  let chosen: readonly boolean[] = own.map((move, c) => (nearest[c] as number) > move);
  let pieces = placed(chosen);
  let best = { cost: Infinity, pieces };
  for (let k = 0; ; k++) {
    const offAlike = alike.map(({ slopes }) =>
      slopes.reduce((sum, [c, slope]) => {
        const { lower, upper } = lines[c] as GridLines;
        return sum + slope * (chosen[c] ? upper : lower);
      }, 0),
    );
    const off = [...missed(pieces), ...offAlike];
    const cost = totalCost(sums, off);
    if (cost < best.cost) best = { cost, pieces };
    if (k === MOST_MEASURED) break;
    const next = chooseGrid(lines, sums, sets, { chosen, missed: off });
    if (next.every((upper, c) => upper === chosen[c])) break;
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

/** `off` leads to the nearest grid line; the other lies a step beyond where the coordinate belongs. */
function linesBeside(off: number, step: number): GridLines {
  if (Math.abs(off) <= HALF_STEP * step) return { lower: off, upper: off };
  return off > 0 ? { lower: off - step, upper: off } : { lower: off, upper: off + step };
}

function slopedSums(
  { lines, sums }: SewnSums,
  { places }: RuledPattern,
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
            [c, sign * x],
            [c + 1, sign * y],
          ];
    });
  });
  return sums.map(({ terms, tolerance, weight }) => ({
    slopes: terms.flatMap(({ line, times }) =>
      (slopes[line] ?? []).map(([c, slope]) => [c, times * slope] as const),
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
