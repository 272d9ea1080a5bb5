/** A setting that is offered for a decision settles it: the skirt graded with it no longer has the finding. */
import { describe, expect, it } from 'vitest';
import { gradeChart } from '../../src/jobs/grade-chart';
import type { GradeRequest } from '../../src/jobs/requests';
import { settlingOf } from '../../src/verdict/settling';
import { verdictOf } from '../../src/verdict/verdict';
import { chartText } from '../skirts';

const BODIES = { waist_girth: [68, 72, 76], hip_girth: [92, 96, 100], waist_to_hip: [20, 20, 20] };
const REQUESTS: readonly (readonly [string, GradeRequest])[] = [
  [
    'dart-number',
    {
      chart: chartText('cm', { ...BODIES, hip_girth: [76, 80, 84] }, ['1', '2', '3']),
      base: '2',
      style: 'shared-drop',
      set: { back_darts: '2' },
    },
  ],
  [
    'band-ease',
    {
      chart: chartText('cm', BODIES, ['1', '2', '3']),
      base: '2',
      style: 'shared-pencil',
      set: { waist_ease: '0 cm' },
    },
  ],
];

describe.each(REQUESTS)('%s', (check, request) => {
  it('is settled by the setting that is offered', () => {
    const { findings, range, display, chart } = gradeChart(request);
    const labels = range.sizes.map(({ label }) => label);
    const offered = verdictOf(findings, labels, display).decisions.flatMap((decision) => {
      const setting = settlingOf(decision, chart.unit);
      const [first] = decision.findings;
      return setting === undefined || first?.check !== check ? [] : [{ setting, first }];
    });
    expect(offered).toHaveLength(1);
    const [{ setting, first } = { setting: { parameter: '', value: '' }, first: undefined }] =
      offered;
    const set = { ...request.set, [setting.parameter]: setting.value };
    const after = gradeChart({ ...request, set }).findings.filter(
      (finding) => finding.check === check && finding.piece === first?.piece,
    );
    expect(after.filter(({ severity }) => severity === 'warning' || severity === 'fail')).toEqual(
      [],
    );
  });
});
