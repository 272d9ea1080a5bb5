/** Neighboring sizes that are one and the same under several names, in a graded pattern or in a chart. */
import { runsOf } from '../lists/runs';
import type { SizeChart } from '../chart/size-chart';
import type { GradedPattern, SizedPattern } from '../grade/graded-pattern';
import type { GivenRules } from '../rule-sheet/point-rules';
import { SAME_PLACE } from '../tolerance';
import type { Finding } from './finding';
import { ruleFinding } from './finding';

/**
 * A warning for each run of sizes whose points all lie in one place. Typed rules are then most likely
 * steps that were read as moves from the base, which leaves no other trace. A run whose measurements
 * are the same is told of the chart, and a range in which nothing grows as a whole. `exact` is the range before
 * its rules were rounded, where they are, which may be all that makes sizes alike.
 */
export function checkIdenticalSizes(
  { sizes, blend }: Pick<GradedPattern, 'sizes' | 'blend'>,
  { file, typed }: Pick<GivenRules, 'file' | 'typed'>,
  chart: SizeChart | undefined,
  exact: Pick<GradedPattern, 'sizes'> | undefined,
): Finding[] {
  const graded = sizes.filter(({ label }) => label !== blend);
  const runs = alikeRuns(graded, isSamePattern).map((run) => run.map(({ label }) => label));
  const isRounded = (labels: readonly string[]): boolean => {
    const before = exact?.sizes.filter(({ label }) => labels.includes(label)) ?? [];
    return before.slice(1).some((one, i) => !isSamePattern(before[i] ?? one, one));
  };
  return runs
    .filter((labels) => chart === undefined || !isSameInChart(chart, labels))
    .map((labels) =>
      isRounded(labels)
        ? { ...identical('identical-sizes', labels, 'by rounding alone'), byRounding: true }
        : {
            ...identical(
              'identical-sizes',
              labels,
              'every point of every piece lies in the same place; ' +
                (typed
                  ? `are the rules of ${file} steps from size to size, read as moves from the base?`
                  : 'what the chart has different in them, the style does not use'),
            ),
            facts: { same: sameWords(labels), ...(typed ? { rules: file } : {}) },
          },
    );
}

/** A warning for each run of sizes of which every known measurement is the same; none for the whole chart. */
export function checkIdenticalColumns(chart: SizeChart): Finding[] {
  const columns = chart.sizes.map((_, i) => i);
  return alikeRuns(columns, (a, b) => isSameColumn(chart, a, b)).map((run) => {
    const labels = run.map((i) => chart.sizes[i] ?? '');
    return {
      ...identical(
        'identical-measurements',
        labels,
        'every measurement of the chart is the same, and so is the skirt',
      ),
      facts: { same: sameWords(labels) },
    };
  });
}

/** Neighbors that are the same, two or more together; nothing where all are. */
function alikeRuns<One>(
  all: readonly One[],
  isSame: (before: One, one: One) => boolean,
): readonly (readonly One[])[] {
  return runsOf(all, (one, before) => isSame(before, one)).filter(
    ({ length }) => length > 1 && length < all.length,
  );
}

function isSamePattern(before: SizedPattern, one: SizedPattern): boolean {
  return one.pieces.every(({ points }, p) =>
    points.every(({ x, y }, i) => {
      const other = before.pieces[p]?.points[i];
      return isNear(x, other?.x) && isNear(y, other?.y);
    }),
  );
}

function isSameInChart(chart: SizeChart, labels: readonly string[]): boolean {
  const [first = -1, ...others] = labels.map((label) => chart.sizes.indexOf(label));
  return first >= 0 && others.every((one) => one >= 0 && isSameColumn(chart, first, one));
}

/** Rows that the engine does not know make no size. */
function isSameColumn({ rows }: SizeChart, before: number, one: number): boolean {
  return rows.every(({ known, values }) => {
    const [a, b] = [values[before] ?? undefined, values[one] ?? undefined];
    return !known || a === b || (a !== undefined && isNear(a, b));
  });
}

function isNear(a: number, b: number | undefined): boolean {
  return b !== undefined && Math.abs(a - b) <= SAME_PLACE;
}

function identical(check: string, labels: readonly string[], what: string): Finding {
  const place = { size: `${labels[0] ?? ''}-${labels.at(-1) ?? ''}` };
  return ruleFinding(
    'warning',
    check,
    place,
    `${sameWords(labels)}: these sizes are identical, ${what}`,
  );
}

/** `8 = 10`. */
function sameWords(labels: readonly string[]): string {
  return labels.join(' = ');
}
