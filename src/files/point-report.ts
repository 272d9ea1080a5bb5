/** A grade told point by point: regular steps, breaks beside those of the chart, what is unlike its neighbors. */
import { girthsBreakingAt } from '../check/girth-breaks';
import type { PointRun } from '../grade/point-runs';
import { pointSteps } from '../grade/point-runs';
import type { GradeResult } from '../jobs/grade-result';
import { grouped } from '../lists/grouped';
import { counted } from '../table/counted';
import { SAME_POINT_STEP } from '../tolerance';
import type { LengthDisplay } from '../units';
import { showLength } from '../units';
import { plain } from './report-file';
import type { ResultFile } from './result-file';

type Axis = PointRun['axis'];
const AXES: readonly Axis[] = ['x', 'y'];

/** The runs of a point of one piece, by its place. */
type RunsAt = (point: number, axis: Axis) => readonly PointRun[];

/** A point that moves, by its places, with the points before and after it on the outline. */
interface ReportedPoint {
  readonly piece: number;
  readonly point: number;
  readonly name: string;
  readonly beside: readonly number[];
}

/** What is said of one point. */
interface Told {
  readonly name: string;
  /** Sizes at which its steps change. */
  readonly breaks: readonly string[];
  readonly line: string;
  /** Why it is unlike its neighbors; empty for one that is not. */
  readonly unlike: readonly string[];
}

/** `point-report.md`: what is out of the ordinary first, then every point of every piece that moves. */
export function pointReport(result: GradeResult, runs: readonly PointRun[]): ResultFile {
  const { title, range, chart } = result;
  const labels = range.sizes.map(({ label }) => label).filter((label) => label !== range.blend);
  const keyOf = (piece: string, point: string, axis: Axis): string =>
    JSON.stringify([piece, point, axis]);
  const byPoint = grouped(runs, ({ piece, point, axis }) => keyOf(piece, point, axis));
  const told = range.plans.map(({ name, pointNames }, p) => {
    const runsAt: RunsAt = (point, axis) =>
      byPoint.get(keyOf(name, pointNames[point] ?? '', axis)) ?? [];
    const points = movingPoints(result, p, runsAt);
    return { name, points: points.map((own) => toldOf(own, result, runsAt, labels)) };
  });
  const all = told.flatMap(({ name, points }) =>
    points.map((own) => ({ ...own, name: `${name}.${own.name}` })),
  );
  const chartBreaks = (size: string): readonly string[] =>
    chart === undefined ? [] : girthsBreakingAt(chart, size);
  const parts = [
    `# ${plain(title)}: the grade by point`,
    `${counted(all.length, 'point')} of ${counted(told.length, 'piece')} move over ${plain(labels.join(', '))}; x runs from ` +
      'the center line to the side, y down. A step leads from a size to the next larger one.',
    '## Where steps change',
    ...breakLines(all, labels, chart === undefined ? undefined : chartBreaks),
    '## Unlike their neighbors',
    unlikeLines(all),
    ...told.flatMap(({ name, points }) =>
      points.length === 0
        ? []
        : [`## ${plain(name)}`, points.map(({ line }) => `- ${plain(line)}`).join('\n')],
    ),
  ];
  return { name: 'point-report.md', text: `${parts.join('\n\n')}\n` };
}

function movingPoints(
  { range, pattern }: GradeResult,
  piece: number,
  runsAt: RunsAt,
): readonly ReportedPoint[] {
  const plan = range.plans[piece];
  const stops = (pattern.pieces[piece]?.path.stops ?? []).map(({ point }) => point);
  return (plan?.pointNames ?? []).flatMap((name, point) => {
    if (AXES.every((axis) => runsAt(point, axis).length === 0)) return [];
    const at = stops.indexOf(point);
    const beside = at < 0 ? [] : [stops.at(at - 1), stops[(at + 1) % stops.length]];
    return [{ piece, point, name, beside: beside.filter((own) => own !== undefined) }];
  });
}

function toldOf(
  own: ReportedPoint,
  { range, display }: GradeResult,
  runsAt: RunsAt,
  labels: readonly string[],
): Told {
  const breaksOf = (point: number, axis: Axis): readonly string[] =>
    runsAt(point, axis)
      .slice(1)
      .map(({ from }) => labels[from] ?? '');
  const stepsOf = (point: number, axis: Axis): readonly number[] =>
    pointSteps(range.rules, labels.length, { piece: own.piece, point }, axis);
  const unlike = AXES.flatMap((axis): readonly string[] => {
    if (own.beside.length < 2) return [];
    const near = new Set(own.beside.flatMap((point) => breaksOf(point, axis)));
    const alone = breaksOf(own.point, axis).filter((size) => !near.has(size));
    const isOdd = movesOtherwise(
      stepsOf(own.point, axis),
      own.beside.map((point) => stepsOf(point, axis)),
    );
    return [
      ...(alone.length === 0
        ? []
        : [`its ${axis} steps change at ${alone.join(', ')}, where those of neither neighbor do`]),
      ...(isOdd ? [`its neighbors move alike along ${axis}, and it moves otherwise`] : []),
    ];
  });
  const steps = AXES.map((axis) => stepWords(runsAt(own.point, axis), axis, labels, display));
  return {
    name: own.name,
    breaks: [...new Set(AXES.flatMap((axis) => breaksOf(own.point, axis)))],
    line: `${own.name}: ${steps.join('; ')}.`,
    unlike,
  };
}

/** Whether the points beside one move alike in every step, and the point does not move with them. */
function movesOtherwise(own: readonly number[], beside: readonly (readonly number[])[]): boolean {
  const [before = [], after = []] = beside;
  const isAlike = (one: readonly number[], other: readonly number[]): boolean =>
    one.every((step, i) => Math.abs(step - (other[i] ?? NaN)) < SAME_POINT_STEP);
  return isAlike(before, after) && !isAlike(own, before);
}

/** `x +1/4 in a size to 14, then +3/8 in to 18`. */
function stepWords(
  runs: readonly PointRun[],
  axis: Axis,
  labels: readonly string[],
  display: LengthDisplay,
): string {
  const shown = (mm: number): string =>
    `${mm > 0 ? '+' : ''}${showLength(mm, { ...display, fractions: true })}`;
  const [first, ...others] = runs;
  if (first === undefined) return `${axis} stays`;
  if (others.length === 0) return `${axis} ${shown(first.step)} a size`;
  const count = labels.length - 1;
  if (runs.length > MOST_RUNS && 2 * runs.length > count) {
    const steps = runs.map(({ step }) => step);
    return `${axis} irregular, from ${shown(Math.min(...steps))} to ${shown(Math.max(...steps))} a size`;
  }
  const parts = runs.map(({ step, to }) => `${shown(step)} to ${labels[to] ?? ''}`);
  return `${axis} ${parts.join(', then ')}`;
}

/** Runs that are told one by one though each is of a step or two. */
const MOST_RUNS = 3;

/** The sizes at which points break, with the girths of the chart that do; those of the chart alone besides. */
function breakLines(
  all: readonly Told[],
  labels: readonly string[],
  chartBreaks: ((size: string) => readonly string[]) | undefined,
): readonly string[] {
  const lines = labels.flatMap((size) => {
    const here = all.filter(({ breaks }) => breaks.includes(size)).map(({ name }) => name);
    const girths = chartBreaks?.(size) ?? [];
    if (here.length === 0 && girths.length === 0) return [];
    const points =
      here.length === 0
        ? 'no point'
        : here.length > MOST_NAMED
          ? counted(here.length, 'point')
          : here.join(', ');
    const chart =
      chartBreaks === undefined
        ? ''
        : girths.length === 0
          ? '; in the chart nothing changes there'
          : `; in the chart ${girths.join(', ')}`;
    return [`- ${plain(`${size}: ${points}${chart}`)}`];
  });
  const regular = all.filter(({ breaks }) => breaks.length === 0).length;
  const head = `${counted(regular, 'point')} of ${all.length} have the same step throughout.`;
  return lines.length === 0 ? [head] : [head, lines.join('\n')];
}

/** Names that are told one by one. */
const MOST_NAMED = 8;

function unlikeLines(all: readonly Told[]): string {
  const odd = all.filter(({ unlike }) => unlike.length > 0);
  if (odd.length === 0)
    return 'No point breaks alone on the outline, or moves otherwise than two neighbors that move alike.';
  return odd.map(({ name, unlike }) => `- ${plain(`${name}: ${unlike.join('; ')}`)}`).join('\n');
}
