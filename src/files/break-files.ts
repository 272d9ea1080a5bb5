/** The size breaks of a style: where the steps of each point change, beside those of its chart. */
import type { PointRun } from '../grade/point-runs';
import { pointRuns } from '../grade/point-runs';
import type { GradeResult } from '../jobs/grade-result';
import { girthsBreakingAt } from '../check/girth-breaks';
import { writtenCsv } from '../table/written-csv';
import { tableLength } from '../units';
import type { Exported } from './exports';
import { pointReport } from './point-report';

/**
 * `size-breaks.csv`: `piece,point,axis,from,to,step_in,least_in,most_in,breaks,others,chart`, a row for
 * each run of like steps. `breaks` is the size at which the step changed, empty for the first run;
 * `others` how many points of the piece break there along the same axis, so that 0 is a point unlike all
 * beside it; `chart` the girths whose step changes there, `none`, or empty without a chart. With it the
 * same in words, by point.
 */
export function breakFiles(result: GradeResult): Exported {
  const { range, chart, display } = result;
  const labels = range.sizes.map(({ label }) => label);
  const runs = pointRuns(range);
  const show = (mm: number): string => tableLength(mm, display);
  const rows = runs.map((run) => {
    const { piece, point, axis, from, to, step, least, most } = run;
    const isBreak = runs.some((own) => isSamePoint(own, run) && own.to === from);
    return [
      ...[piece, point, axis, labels[from], labels[to], show(step), show(least), show(most)],
      ...(isBreak
        ? [
            labels[from],
            String(breakingWith(run, runs)),
            chart === undefined
              ? ''
              : girthsBreakingAt(chart, labels[from] ?? '').join(', ') || 'none',
          ]
        : ['', '', '']),
    ];
  });
  const { unit } = display;
  const head = [
    ...['piece', 'point', 'axis', 'from', 'to', `step_${unit}`, `least_${unit}`, `most_${unit}`],
    ...['breaks', 'others', 'chart'],
  ];
  return {
    files: [
      { name: 'size-breaks.csv', text: writtenCsv([head, ...rows]) },
      pointReport(result, runs),
    ],
    findings: [],
  };
}

function isSamePoint(one: PointRun, other: PointRun): boolean {
  return one.piece === other.piece && one.point === other.point && one.axis === other.axis;
}

/** How many other points of the piece have a run that begins at the same size after another. */
function breakingWith(run: PointRun, runs: readonly PointRun[]): number {
  return runs.filter(
    (own) =>
      own.piece === run.piece &&
      own.axis === run.axis &&
      own.point !== run.point &&
      own.from === run.from,
  ).length;
}
