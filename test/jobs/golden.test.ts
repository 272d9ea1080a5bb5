import { describe, expect, it } from 'vitest';
import { gradeChart, resultFiles } from '../../src/index';
import { expectGolden } from '../golden-file';
import { chartText } from '../skirts';

// Three sizes of an invented chart, with an uneven grade and rounded rules.
const CHART = chartText(
  'in',
  {
    waist_girth: ['25 1/2', '27', '29'],
    hip_girth: ['36', '37 1/2', '39 5/8'],
    waist_to_hip: ['7 7/8', '8', '8 1/8'],
    skirt_length: ['25 3/4', '26', '26 1/4'],
  },
  ['S', 'M', 'L'],
);

const FILES = resultFiles(
  gradeChart({
    chart: `# title: Trial skirt\n${CHART}`,
    file: 'trial.csv',
    style: 'pencil',
    base: 'M',
    round: '1/16in',
  }),
);

describe('the results for three sizes', () => {
  it.each([
    'nest.svg',
    'size-M.svg',
    'graded-points.csv',
    'grade-rules.csv',
    'finished-measurements.csv',
    'findings.csv',
  ])('%s is as it was when it was last looked at', (name) => {
    const text = FILES.find((file) => file.name === name)?.text ?? '';
    expect(text).not.toBe('');
    expectGolden(`three-sizes-${name}`, text);
  });
});
