/** Grade rules: how far every point of every piece moves from the base size to each other size. */
import type { Point } from '../geometry/point';
import { add, subtract } from '../geometry/point';
import type { Piece } from '../pattern/piece';

/**
 * The rules of a range. `moves[size][piece][point]` is the cumulative move, in millimeters, from
 * the base size; sizes in chart order, pieces and points in the order of the plans. The base's own
 * moves are zero.
 */
export interface GradeRules {
  readonly base: number;
  readonly moves: readonly (readonly (readonly Point[])[])[];
}

/** Derives the rules from one draft a size; `drafts[base]` is the base size. */
export function deriveRules(drafts: readonly (readonly Piece[])[], base: number): GradeRules {
  const basePieces = drafts[base] ?? [];
  const moves = drafts.map((pieces) =>
    pieces.map(({ points }, p) => {
      const from = basePieces[p]?.points ?? [];
      return points.map((to, i) => subtract(to, from[i] as Point));
    }),
  );
  return { base, moves };
}

/**
 * The same rules as steps: each size's move from its neighbor on the base's side, so that the steps
 * from the base outward add up to the cumulative move. The base's steps are zero.
 */
export function stepsOf({ base, moves }: GradeRules): GradeRules['moves'] {
  return moves.map((pieces, size) => {
    const neighbor = moves[size + Math.sign(base - size)] ?? pieces;
    return pieces.map((points, p) =>
      points.map((move, i) => subtract(move, neighbor[p]?.[i] as Point)),
    );
  });
}

/** Base plus rules: the pieces of every size, without any use of its draft. */
export function applyRules(
  basePieces: readonly Piece[],
  { moves }: GradeRules,
): readonly (readonly Piece[])[] {
  return moves.map((pieces) =>
    basePieces.map(({ plan, points }, p) => ({
      plan,
      points: points.map((from, i) => add(from, pieces[p]?.[i] as Point)),
    })),
  );
}
