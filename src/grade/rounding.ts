/** Rounding of grade rules to a step that a ruler can measure. */
import type { Point } from '../geometry/point';
import { add, point } from '../geometry/point';
import { HALF_STEP } from '../tolerance';
import type { GradeRules } from './rules';
import { stepsOf } from './rules';

/**
 * Rounds to the nearest multiple of `step` (both in mm); halves away from zero. A value within
 * HALF_STEP of a half counts as the half, since 3/16 in divided by 1/8 in is not exact in binary.
 */
export function roundTo(value: number, step: number): number {
  const count = Math.floor(Math.abs(value) / step + 0.5 + HALF_STEP);
  return count === 0 ? 0 : Math.sign(value) * count * step;
}

function roundPoint({ x, y }: Point, step: number): Point {
  return point(roundTo(x, step), roundTo(y, step));
}

/**
 * Rounds each step between neighbors and adds the steps up: the way that drifts. It is computed
 * only to show by how much.
 */
export function roundEachStep(rules: GradeRules, step: number): GradeRules {
  const steps = stepsOf(rules);
  const moves = [...rules.moves];
  const outward = (direction: 1 | -1): void => {
    for (let size = rules.base + direction; size >= 0 && size < steps.length; size += direction) {
      const neighbor = moves[size - direction] ?? [];
      moves[size] = (steps[size] ?? []).map((points, p) =>
        points.map((move, i) => add(roundPoint(move, step), neighbor[p]?.[i] as Point)),
      );
    }
  };
  outward(1);
  outward(-1);
  return { base: rules.base, moves };
}
