/** Moves from the base and steps from the neighbor: two ways of writing one rule. */

/** Cumulative moves as steps from the neighbor on the base's side. */
export function asSteps(moves: readonly number[], base: number): readonly number[] {
  return moves.map((move, i) => (i === base ? 0 : move - (moves[i + Math.sign(base - i)] ?? NaN)));
}

/** Steps from the neighbor on the base's side, added up from the base. */
export function addedUp(steps: readonly number[], base: number): readonly number[] {
  const moves = steps.map(() => 0);
  for (const direction of [1, -1])
    for (let i = base + direction; i >= 0 && i < steps.length; i += direction)
      moves[i] = (moves[i - direction] ?? 0) + (steps[i] ?? NaN);
  return moves;
}

/** What moves grow by from each size to the next larger one, one fewer than there are sizes. */
export function growthOf(moves: readonly number[]): readonly number[] {
  return moves.slice(1).map((move, i) => move - (moves[i] ?? NaN));
}
