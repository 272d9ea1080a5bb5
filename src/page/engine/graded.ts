/** The skirt that a wish is about, graded once for all wishes about it. */
import { DEFAULT_STYLE } from '../../draft/default-style';
import { readStyle } from '../../draft/style-file';
import { withSettings } from '../../draft/with-settings';
import type { GradeResult } from '../../jobs/grade-result';
import { gradeChart } from '../../jobs/grade-chart';
import { gradePattern } from '../../jobs/grade-pattern';
import type { GradeRequest, RangeRequest } from '../../jobs/requests';
import type { Pattern } from '../wish';

/** What grades a pattern and remembers the last one. Throws InputError as `gradeChart` does. */
export type Grader = (pattern: Pattern) => GradeResult;

/** A grader with a memory of its own. */
export function graderWithMemory(): Grader {
  let last: { readonly key: string; readonly result: GradeResult } | undefined;
  return (pattern) => {
    const key = JSON.stringify(pattern);
    if (last?.key !== key) last = { key, result: gradedOf(pattern) };
    return last.result;
  };
}

function gradedOf(pattern: Pattern): GradeResult {
  const { own, asked } = pattern;
  if (own === undefined) return gradeChart(requestOf(pattern));
  const { unit, fractions, round, stack, lines } = asked;
  const known = Object.entries({ unit, fractions, round, stack, lines }).filter(
    ([, value]) => value !== undefined,
  );
  return gradePattern({ ...own, ...(Object.fromEntries(known) as RangeRequest) });
}

/** The request of a chart, the same that the command line makes of its files and options. */
export function requestOf({ chart, styleFile, project, asked }: Pattern): GradeRequest {
  const named =
    styleFile === undefined
      ? (asked.style ?? DEFAULT_STYLE)
      : readStyle(styleFile.text, styleFile.file);
  return {
    ...asked,
    chart: chart.text,
    file: chart.file,
    style: project === undefined ? named : withSettings(named, project),
  };
}
