/** A grade told by point; steps and breaks are worked by hand. */
import { expect, it } from 'vitest';
import { breakFiles } from '../../src/files/break-files';
import { FRONT, graded } from '../given/sheets';

const RULES = `# sizes: 8, 10, 12, 14, 16, 18
point,axis,8,10,12,14,16,18
front.center_waist,dx,0,0,0,0,0,0
front.dart_in,dx,-1/4,-1/8,0,1/8,1/4,3/8
front.dart_out,dx,-1/4,-1/8,0,1/8,1/4,3/8
front.side_waist,dx,-1/2,-1/4,0,1/4,1/2,3/4
front.side_hip,dx,-1/2,-1/4,0,1/4,1/2,1
front.side_hem,dx,-1/2,-1/4,0,1/4,1/2,3/4
front.side_hem,dy,-1,-1/4,0,1/8,1/2,3/4
front.center_hem,dy,-1,-1/4,0,1/8,1/2,3/4
`;
const CHART = `# unit: in
measurement,8,10,12,14,16,18
waist,24,25,26,27,28 1/2,30
hip,34,35,36,37,38,39
`;

function report(rules: string, chart?: string): string {
  const more = chart === undefined ? {} : { chart: { file: 'chart.csv', text: chart } };
  const { files } = breakFiles(graded(FRONT, rules, more));
  const text = files.find(({ name }) => name === 'point-report.md')?.text ?? '';
  return text.replace(/\\/gu, '');
}

it('tells the steps of each point along each axis', () => {
  const told = report(RULES);
  // Three points of the dart, two of the side and two of the hem move, the waist's center does not.
  expect(told).toContain('7 points of 1 piece move over 8, 10, 12, 14, 16, 18;');
  expect(told).toContain('- side_waist: x +1/4 in a size; y stays.');
  expect(told).toContain('- side_hip: x +1/4 in to 16, then +1/2 in to 18; y stays.');
  // Steps of 3/4, 1/4, 1/8, 3/8 and 1/4 in.
  expect(told).toContain('- center_hem: x stays; y irregular, from +1/8 in to +3/4 in a size.');
});

it('holds breaks against those of the chart', () => {
  const told = report(RULES, CHART);
  expect(told).toContain('- 14: front.side_hem, front.center_hem; in the chart waist_girth');
  expect(told).toContain(
    '- 16: front.side_hip, front.side_hem, front.center_hem; in the chart nothing changes there',
  );
  expect(report(RULES)).toContain('- 14: front.side_hem, front.center_hem\n');
});

it('names a point that breaks alone between two that move alike', () => {
  expect(report(RULES)).toContain(
    '- front.side_hip: its x steps change at 16, where those of neither neighbor do; ' +
      'its neighbors move alike along x, and it moves otherwise\n',
  );
  const even = RULES.replace('dx,-1/2,-1/4,0,1/4,1/2,1\n', 'dx,-1/2,-1/4,0,1/4,1/2,3/4\n');
  expect(report(even)).toContain('No point breaks alone on the outline');
  // A turned sign is regular, and unlike both its neighbors.
  const turned = RULES.replace('dx,-1/2,-1/4,0,1/4,1/2,1\n', 'dx,1/2,1/4,0,-1/4,-1/2,-3/4\n');
  expect(report(turned)).toContain(
    '- front.side_hip: its neighbors move alike along x, and it moves otherwise\n',
  );
});
