/**
 * The smoothness of a chart's own steps. Raw chart data jump; steps may grow at a break but should
 * not go up and down (common practice, no source).
 */
import { present } from '../lists/present';
import type { SizeChart } from '../chart/size-chart';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { chartBodies, chartSteps, neighbors } from './chart-bodies';
import { checkBodies } from './chart-body-checks';
import { checkDropChange } from './chart-drop';
import type { Girth, Leap, PlacedRun, StepRun } from './chart-step-runs';
import { GIRTHS, leapingEnds, stepRuns, turningRuns } from './chart-step-runs';
import type { Finding } from './finding';
import { found } from './finding';
import { checkLargerGirths } from './larger-girths';

const SOURCE = 'common practice, no source';

/** A size at which a step changes for good: the run that ends there and the run that begins. */
interface GradeBreak {
  readonly size: string;
  readonly before: StepRun;
  readonly after: StepRun;
}

/**
 * What a chart's waist and hip show by themselves: steps that go up and down or leap, breaks, a drop that
 * changes, and girths that no body has. Nothing about steps where waist or hip has a blank cell.
 */
export function checkChartSteps(chart: SizeChart, display: LengthDisplay): Finding[] {
  const steps = chartSteps(chart);
  const girths = GIRTHS.map((girth) => {
    const runs = stepRuns(steps, girth);
    return { girth, uneven: turningRuns(runs), ends: leapingEnds(runs), breaks: gradeBreaks(runs) };
  });
  return present([
    ...checkBodies(chart, display),
    ...checkLargerGirths(chart, display),
    ...girths.flatMap(({ girth, uneven }) =>
      uneven.map((placed) => unevenFinding(placed, girth, display)),
    ),
    ...girths.flatMap(({ girth, ends }) => ends.map((leap) => leapFinding(leap, girth, display))),
    ...girths.flatMap(({ girth, breaks }) =>
      breaks.map((change) => breakFinding(change, girth, display)),
    ),
    breaksApart(girths),
    ...checkDropChange(chartBodies(chart), display),
  ]);
}

/**
 * Where a step changes and then stays or goes on the same way. A single step that is larger or
 * smaller than its neighbors is no break: both changes beside it are its own unevenness.
 */
function gradeBreaks(runs: readonly StepRun[]): GradeBreak[] {
  const spikes = turningRuns(runs)
    .filter(isSpike)
    .map(({ run }) => run);
  return neighbors(runs)
    .filter(([before, after]) => !spikes.includes(before) && !spikes.includes(after))
    .map(([before, after]) => ({ size: after.from.size, before, after }));
}

function isSpike({ run }: PlacedRun): boolean {
  return run.length === 1;
}

/** A leap at an end of the range is a slip of its last cell rather than a break. */
function leapFinding({ end, beside, most }: Leap, girth: Girth, display: LengthDisplay): Finding {
  return found({
    severity: 'warning',
    check: 'leaping-step',
    size: `${end.from.size}-${end.to.size}`,
    subject: `${girth}_girth`,
    measured: end.growth,
    expected: beside.growth,
    source: SOURCE,
    message:
      `from ${end.from.size} to ${end.to.size} the ${girth} grows ` +
      `${showLength(end.growth, display)}, from ${showLength(end.from[girth], display)} to ` +
      `${showLength(end.to[girth], display)}, while no other step of it is above ` +
      `${showLength(most, display)}: is the cell right?`,
  });
}

/** A warning for a single step; a note where several equal steps turn, which break on both sides. */
function unevenFinding(placed: PlacedRun, girth: Girth, display: LengthDisplay): Finding {
  const { before, run, after } = placed;
  const named = (steps: StepRun) =>
    `${showLength(steps.growth, display)} (${steps.from.size} to ${steps.to.size})`;
  return found({
    severity: isSpike(placed) ? 'warning' : 'note',
    check: 'uneven-steps',
    size: `${run.from.size}-${run.to.size}`,
    subject: `${girth}_girth`,
    measured: run.growth,
    source: SOURCE,
    message:
      `the ${girth} goes up and down: steps of ${named(before)}, then ${named(run)}, ` +
      `then ${named(after)}`,
  });
}

function breakFinding(
  { size, before, after }: GradeBreak,
  girth: Girth,
  display: LengthDisplay,
): Finding {
  return found({
    severity: 'note',
    check: 'grade-break',
    size,
    subject: `${girth}_girth`,
    measured: after.growth,
    expected: before.growth,
    source: SOURCE,
    message:
      `the ${girth} breaks at ${size}: its step ` +
      `${after.growth > before.growth ? 'grows' : 'falls'} from ` +
      `${showLength(before.growth, display)} to ${showLength(after.growth, display)}`,
  });
}

/** One note where waist and hip do not break at the same sizes. */
function breaksApart(
  girths: readonly { readonly girth: Girth; readonly breaks: readonly GradeBreak[] }[],
): Finding | undefined {
  const places = girths.map(({ girth, breaks }) => ({
    girth,
    sizes: breaks.map(({ size }) => size).join(', '),
  }));
  if (new Set(places.map(({ sizes }) => sizes)).size <= 1) return undefined;
  const told = places.map(
    ({ girth, sizes }) => `the ${girth} ${sizes === '' ? 'does not break' : `breaks at ${sizes}`}`,
  );
  return found({
    severity: 'note',
    check: 'breaks-differ',
    subject: 'waist_girth, hip_girth',
    source: SOURCE,
    message: `${told.join(' and ')}, so the drop changes between`,
  });
}
