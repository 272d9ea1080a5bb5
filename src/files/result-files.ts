/** A graded result as named texts, ready for whoever writes files. */
import { present } from '../lists/present';
import type { GradeResult } from '../jobs/grade-result';
import { drawingFiles } from './drawing-files';
import type { ResultFile } from './result-file';
import { longFile } from './result-file';
import { seamsTable } from './seams-table';
import {
  findingsTable,
  finishedMeasurementsTable,
  gradeRulesRows,
  gradedPointsRows,
} from './tables';

/**
 * The files that every result has, in a fixed order, without rules where there is one size alone; the same result gives the same bytes. What is
 * finished is told where it was measured.
 */
export function resultFiles(result: GradeResult): readonly ResultFile[] {
  const { range, ruleTexts, seams, shown, display, findings } = result;
  const isMeasured = shown.some(({ measures }) => measures.length > 0);
  return present([
    ...drawingFiles(result),
    longFile('graded-points.csv', () => gradedPointsRows(shown, display)),
    // One body alone is drafted and does not grow.
    range.sizes.length > 1 &&
      longFile('grade-rules.csv', () => gradeRulesRows(range, ruleTexts, shown, display)),
    isMeasured && {
      name: 'finished-measurements.csv',
      text: finishedMeasurementsTable(shown, display),
    },
    { name: 'seams.csv', text: seamsTable(range, seams, display) },
    { name: 'findings.csv', text: findingsTable(findings, display) },
  ]);
}
