/** Charts graded once a worker: a result is a value, so tests of many files may share it. */
import { gradeChart } from '../src/index';
import type { Drafted, GradeRequest, GradeResult } from '../src/index';

/** What `gradeChart` gives. */
export type DraftedResult = GradeResult & Drafted;

const made = new Map<string, DraftedResult>();

/** What `gradeChart` makes of the request; the same object for the same request. */
export function gradedOnce(request: GradeRequest): DraftedResult {
  const key = JSON.stringify(request);
  const result = made.get(key) ?? gradeChart(request);
  made.set(key, result);
  return result;
}
