/** The steps of one girth, gathered into runs of the same grade. */
import { LEAP, SAME_PLACE, SAME_STEP } from '../tolerance';
import type { ChartBody, ChartStep } from './chart-bodies';

/** The two girths of a skirt. */
export type Girth = 'waist' | 'hip';

/** The girths whose steps are told, in the order of the findings. */
export const GIRTHS: readonly Girth[] = ['waist', 'hip'];

/** Neighboring steps of the same grade. */
export interface StepRun {
  readonly from: ChartBody;
  readonly to: ChartBody;
  /** Millimeters: the first of the steps. */
  readonly growth: number;
  /** How many steps. */
  readonly length: number;
}

/** True where two steps (mm) count as the same grade. */
export function sameStep(a: number, b: number): boolean {
  return Math.abs(a - b) < SAME_STEP - SAME_PLACE;
}

/** The steps of a girth as runs, from small to large. */
export function stepRuns(steps: readonly ChartStep[], girth: Girth): StepRun[] {
  return steps.reduce<StepRun[]>((runs, step) => {
    const last = runs.at(-1);
    return last !== undefined && sameStep(step[girth], last.growth)
      ? [...runs.slice(0, -1), { ...last, to: step.to, length: last.length + 1 }]
      : [...runs, { from: step.from, to: step.to, growth: step[girth], length: 1 }];
  }, []);
}

/** A run together with the runs beside it. */
export interface PlacedRun {
  readonly before: StepRun;
  readonly run: StepRun;
  readonly after: StepRun;
}

/** The runs that are larger than the runs on both their sides, or smaller than both. */
export function turningRuns(runs: readonly StepRun[]): PlacedRun[] {
  return runs.flatMap((run, index) => {
    const before = runs[index - 1];
    const after = runs[index + 1];
    if (before === undefined || after === undefined) return [];
    const turns = run.growth > before.growth === run.growth > after.growth;
    return turns ? [{ before, run, after }] : [];
  });
}

/** A single step at an end of the range that is out of all proportion to the others. */
export interface Leap {
  readonly end: StepRun;
  /** The run beside it. */
  readonly beside: StepRun;
  /** mm. The largest of the other steps. */
  readonly most: number;
}

/** mm. Beside steps that hardly grow a usual one is no leap: those below count as this. */
const USUAL_STEP = 12;
/** Two steps say nothing of each other; three or more do. */
const TELLING = 3;

/** The first and the last step where each is more than LEAP times the largest of all others. */
export function leapingEnds(runs: readonly StepRun[]): Leap[] {
  if (runs.reduce((sum, { length }) => sum + length, 0) < TELLING) return [];
  const [first, second] = runs;
  const [beforeLast, last] = runs.slice(-2);
  return [
    { end: first, beside: second },
    { end: last, beside: beforeLast },
  ].flatMap(({ end, beside }) => {
    if (end?.length !== 1 || beside === undefined || end === beside) return [];
    const most = Math.max(...runs.filter((run) => run !== end).map(({ growth }) => growth));
    const leaps = end.growth > LEAP * Math.max(most, USUAL_STEP) + SAME_PLACE;
    return leaps ? [{ end, beside, most }] : [];
  });
}
