/** The spec of a result as files. */
import type { GradeResult } from '../jobs/grade-result';
import type { SpecRequest } from '../jobs/grade-spec';
import { gradeSpec } from '../jobs/grade-spec';
import type { Exported } from './exports';
import { gradeSheet, sampleTable, specTable } from './spec-tables';

/** The tables of a spec; that of the sample only where one was measured. Throws as `gradeSpec` does. */
export function specFiles(result: GradeResult, request: SpecRequest): Exported {
  const { spec, sample, findings } = gradeSpec(result, request);
  return {
    files: [
      { name: 'spec.csv', text: specTable(spec) },
      { name: 'grade-sheet.csv', text: gradeSheet(spec) },
      ...(sample.length === 0 ? [] : [{ name: 'sample.csv', text: sampleTable(sample, spec) }]),
    ],
    findings,
  };
}
