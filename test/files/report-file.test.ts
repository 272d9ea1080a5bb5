/** The designer's page: a blend is only spoken of where one can be asked for. */
import { describe, expect, it } from 'vitest';
import { reportFile } from '../../src/files/report-file';
import { gradeChart } from '../../src/jobs/grade-chart';
import { FRONT, evenRules, graded } from '../given/sheets';

// Girths of our own that grow by 1 in a size; common practice, no source.
const CHART = `# unit: in
measurement,10,12,14
waist_girth,27,28,29
hip_girth,37,38,39
waist_to_hip,8,8,8
`;

describe('the advice about a body between sizes', () => {
  it('is given for a skirt that is drafted from the chart', () => {
    const { text } = reportFile(gradeChart({ chart: CHART, base: '12' }));
    expect(text).toContain('a blend such as "waist 12, hip 14"');
  });

  it('is not given for a pattern beside a chart, which has no blends', () => {
    const result = graded(FRONT, evenRules('10, 12, 14'), {
      chart: { text: CHART, file: 'chart.csv' },
    });
    expect(result.chart).toBeDefined();
    expect(reportFile(result).text).not.toContain('blend');
  });
});
