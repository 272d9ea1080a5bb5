/** Charts graded once a worker: a result is a value, so tests of many files may share it. */
import { gradeChart } from '../src/index';
import type { Drafted, GradeRequest, GradeResult } from '../src/index';

/** What `gradeChart` gives. */
export type DraftedResult = GradeResult & Drafted;

const made = new Map<string, DraftedResult>();

/** What `gradeChart` makes of the request, as `gradeLazily` does; the same object for the same request. */
export function gradedOnce(request: GradeRequest): DraftedResult {
  const key = JSON.stringify(request);
  const result = made.get(key) ?? gradeLazily(request);
  made.set(key, result);
  return result;
}

/**
 * What `gradeChart` makes of the request, but that its findings are made when somebody asks for them:
 * checks take half of the time, and most tests look at the shapes alone.
 */
export function gradeLazily(request: GradeRequest): DraftedResult {
  let findings: DraftedResult['findings'] | undefined;
  return {
    ...gradeChart(request, []),
    get findings() {
      return (findings ??= gradeChart(request).findings);
    },
  };
}
