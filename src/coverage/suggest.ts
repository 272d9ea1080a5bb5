/**
 * A range of sizes laid over a population. After ISO 8559-3 as it is known here from memory, unverified:
 * intervals of one width over a control dimension, the other dimension following it by its regression.
 * That gives the start, on the waist; which first size and which steps serve most is a search of our own.
 */
import type { Crowd } from './coverage';
import { servedShare } from './served';
import type { FitRules } from '../bodies/fit';
import { fittedSize } from '../bodies/fit';
import type { SizeBody } from '../bodies/fit-rules';
import type { BivariateNormal } from './population';

/** A range by its first size and its steps, in mm. */
interface Ladder {
  readonly waist: number;
  readonly waistStep: number;
  readonly hip: number;
  readonly hipStep: number;
}

/** Of what a ladder is moved by in turn, in steps of the grid. */
const STRIDES: readonly number[] = [8, 4, 2, 1];
const MOVES: readonly (readonly (keyof Ladder)[])[] = [
  ...(['waist', 'waistStep', 'hip', 'hipStep'] as const).map((name) => [name]),
  ['waist', 'hip'],
  ['waistStep', 'hipStep'],
];

/**
 * `count` sizes with even steps on a grid of `grid` mm that serve as many of a crowd as the search
 * finds; `normal` is the normal of the crowd, from which the search starts. Girths grow from size to size.
 */
export function suggestedSizes(
  crowd: Crowd,
  normal: BivariateNormal,
  count: number,
  rules: FitRules,
  grid: number,
): readonly SizeBody[] {
  const share = servedShare(crowd);
  const valueOf = (ladder: Ladder): number =>
    share(sizesOf(ladder, count).map((size) => fittedSize(size, rules)));
  const width = rules.waist.tolerance + Math.min(rules.waist.tolerance, rules.waist.ease);
  let best = climbed(startOf(normal, count, width, grid), valueOf, grid);
  // Wider steps leave gaps and reach further, so the search starts from some of either.
  for (const wider of [1.5, 2]) {
    const other = climbed(startOf(normal, count, width * wider, grid), valueOf, grid);
    if (other.value > best.value) best = other;
  }
  return sizesOf(best.ladder, count);
}

/** Intervals of `width` mm about the mean of the waist, the hip by its regression on it. */
function startOf(
  { waist, hip, r }: BivariateNormal,
  count: number,
  width: number,
  grid: number,
): Ladder {
  const slope = (r * hip.sd) / waist.sd;
  const onGrid = (mm: number): number => Math.round(mm / grid) * grid;
  const waistStep = Math.max(grid, onGrid(width));
  const first = onGrid(waist.mean - (waistStep * (count - 1)) / 2);
  return {
    ...{ waist: first, waistStep },
    hip: onGrid(hip.mean + slope * (first - waist.mean)),
    hipStep: Math.max(grid, onGrid(slope * waistStep)),
  };
}

/** Moves a ladder along its own dimensions for as long as that serves more. */
function climbed(
  start: Ladder,
  valueOf: (ladder: Ladder) => number,
  grid: number,
): { readonly ladder: Ladder; readonly value: number } {
  let best = { ladder: start, value: valueOf(start) };
  for (const stride of STRIDES) {
    for (let isBetter = true; isBetter;) {
      isBetter = false;
      for (const names of MOVES)
        for (const by of [-stride * grid, stride * grid]) {
          const moved = names.reduce(
            (ladder, name) => ({ ...ladder, [name]: ladder[name] + by }),
            best.ladder,
          );
          if (moved.waistStep < grid || moved.hipStep < grid) continue;
          const value = valueOf(moved);
          if (value <= best.value) continue;
          best = { ladder: moved, value };
          isBetter = true;
        }
    }
  }
  return best;
}

function sizesOf({ waist, waistStep, hip, hipStep }: Ladder, count: number): readonly SizeBody[] {
  return Array.from({ length: count }, (_, i) => ({
    label: `${i + 1}`,
    waist: waist + i * waistStep,
    hip: hip + i * hipStep,
  }));
}
