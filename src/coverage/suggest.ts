/**
 * A range of sizes laid over a population. After ISO 8559-3 as it is known here from memory, unverified:
 * intervals of one width over a control dimension, the other dimension following it by its regression.
 * That gives the start, on the waist; which first size and which steps serve most is a search of our own.
 */
import type { Crowd } from './coverage';
import type { ServedShare } from './served';
import { servedShare } from './served';
import type { FitRules } from '../bodies/fit';
import { fittedSize } from '../bodies/fit';
import type { SizeBody } from '../bodies/fit-rules';
import type { BivariateNormal } from './population';

/** A range by its middle and its steps, in mm: about the middle another step moves no size far from its bodies. */
interface Ladder {
  readonly waist: number;
  readonly waistStep: number;
  readonly hip: number;
  readonly hipStep: number;
}

/** Of what a ladder is moved by in turn, in steps of the grid. */
const STRIDES: readonly number[] = [4, 2, 1];
/** One or more of its four numbers by one stride up or down, in all ways. */
const MOVES: readonly Ladder[] = [0, 1, -1].flatMap((waist) =>
  [0, 1, -1].flatMap((waistStep) =>
    [0, 1, -1].flatMap((hip) => [0, 1, -1].map((hipStep) => ({ waist, waistStep, hip, hipStep }))),
  ),
);

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
  const valueBy =
    (share: ServedShare) =>
    (ladder: Ladder): number =>
      share(sizesOf(ladder, count, grid).map((size) => fittedSize(size, rules)));
  const width = rules.waist.tolerance + Math.min(rules.waist.tolerance, rules.waist.ease);
  // Many bodies take long, and their normal leads near to what serves them.
  const byNormal = valueBy(servedShare({ kind: 'normal', normal }));
  // Wider steps leave gaps and reach further, so the search starts from some of either.
  const near = [1, 1.5, 2]
    .map((wider) => climbed(startOf(normal, width * wider, grid), byNormal, grid, STRIDES))
    .reduce((best, one) => (one.value > best.value ? one : best));
  const best = climbed(near.ladder, valueBy(servedShare(crowd)), grid, [1]);
  return sizesOf(best.ladder, count, grid);
}

/** Intervals of `width` mm about the mean of the waist, the hip by its regression on it. */
function startOf({ waist, hip, r }: BivariateNormal, width: number, grid: number): Ladder {
  const steps = Math.max(1, Math.round(width / grid));
  const hipSteps = Math.max(1, Math.round(((r * hip.sd) / waist.sd) * steps));
  return { waist: waist.mean, waistStep: steps * grid, hip: hip.mean, hipStep: hipSteps * grid };
}

/** A ladder and the share that it serves. */
interface Climbed {
  readonly ladder: Ladder;
  readonly value: number;
}

/** Moves a ladder for as long as that serves more. */
function climbed(
  start: Ladder,
  valueOf: (ladder: Ladder) => number,
  grid: number,
  strides: readonly number[],
): Climbed {
  let best: Climbed = { ladder: start, value: valueOf(start) };
  for (const stride of strides) {
    for (let isBetter = true; isBetter;) {
      isBetter = false;
      for (const move of MOVES) {
        const moved = movedBy(best.ladder, move, stride * grid);
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

function movedBy(ladder: Ladder, move: Ladder, by: number): Ladder {
  return {
    waist: ladder.waist + move.waist * by,
    waistStep: ladder.waistStep + move.waistStep * by,
    hip: ladder.hip + move.hip * by,
    hipStep: ladder.hipStep + move.hipStep * by,
  };
}

/** The sizes, all on the grid. */
function sizesOf(
  { waist, waistStep, hip, hipStep }: Ladder,
  count: number,
  grid: number,
): readonly SizeBody[] {
  const first = (middle: number, step: number): number =>
    Math.round((middle - (step * (count - 1)) / 2) / grid) * grid;
  const [firstWaist, firstHip] = [first(waist, waistStep), first(hip, hipStep)];
  return Array.from({ length: count }, (_, i) => ({
    label: `${i + 1}`,
    waist: firstWaist + i * waistStep,
    hip: firstHip + i * hipStep,
  }));
}
